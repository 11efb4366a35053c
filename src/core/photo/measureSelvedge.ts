import { measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import { oneCourse } from './oneCourse.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { sideEdges } from './sideEdge.ts';
import { sideEvidence, sideFeatures } from './sideEvidence.ts';
import { sidePath } from './sidePath.ts';
import type { SideReading } from './sideReading.ts';
import { type SideStrip, sideStrip } from './sideStrip.ts';
import { median, robustSigma } from './statistics.ts';

/** Floats are round and yarn is hairy: no edge is known better, mm. */
const FLOOR = 0.08;
/** Where cloth and surroundings differ by few colour steps, the edge may lie this far off, mm times steps. */
const FAINT = 5;
/** Farther out than this from where the edge usually lies, mm, is surroundings. */
const CLEAR_OUTSIDE = 2;
/** In grain the edge may lie this far off, mm, where the grain is as strong as the difference. */
const GRAINY = 1.5;
/** Cloth and surroundings that differ by less than this many colour steps can't be told apart by colour alone; how far they may draw in. */
const PALE = 20;
const PALE_DRAWN = 0.03;
/** A turn may reach this many passes more or less beyond its end than usual. */
const TURN = 1.5;
/** How much farther a selvedge may lie from its guide for every mm from where the guide is sure. */
const DRAWN = 0.08;
/** The base may have begun off its place by what this height allows, mm. */
const BASE_UNSURE = 25;
/** Cost of one coarse row lying a millimetre too far off. */
const HOLD = 6;
/** The same where the edge is looked for close to its end only, and what its turns and drawing in then leave open. */
const CLOSELY = { hold: 20, turn: 0.5, drawn: 0.02 } as const;
/** Scallops repeat from turn to turn: the middle of what is read is surer by this than if they came by chance. */
const SCALLOPS = 0.5;
/** While a side has few turns yet, how far those reach out is chance: this share of a pass, over their number. */
const FEW_TURNS = 0.8;
/** Nor has it been drawn in or spread yet: what lies off its place is yarn's end or hair by as much, over so many turns. */
const NOT_YET = 0.35;
const DRAWS_AFTER = 3;
/** Heights between readings, mm. */
const EVERY = 2;

/**
 * One selvedge by height: the weft's outer edge, scallops smoothed by a running median.
 * @param guideX cloth x of that side's outer end at a height.
 * @param yTop how high the side is woven. @param unsharp what unsharpness may move an edge by, one sigma, mm.
 * @param closely whether to look close to the outer end only, where a bolder edge beyond was found to be none of cloth's.
 */
export function measureSide(
  sampler: LoomSampler,
  frame: ClothFrame,
  side: 'left' | 'right',
  guideX: (y: number) => number,
  yTop: number,
  unsharp: number,
  closely: boolean,
): SideReading[] {
  if (yTop < 2) return [];
  const strip = sideStrip(sampler, frame, side, guideX, yTop);
  const features = sideFeatures(strip, frame);
  if (features.rows < 2) return [];
  // The weft turns round the outer end: half an end and about one weft thickness, two passes, beyond its middle.
  const usual = frame.endHalf + 2 * frame.planPass;
  // The guide is sure at the fell and, less so, at the base; in between the cloth may draw in and spread.
  const turn = closely ? CLOSELY.turn : TURN;
  const beyond = (outward: number, y: number, drawn: number): number => {
    const free = turn * frame.planPass + 0.3 + drawn * Math.max(0, Math.min(yTop - y, y + BASE_UNSURE));
    return Math.max(0, Math.abs(outward - usual) - free);
  };
  const held = (outward: number, row: number): number =>
    (closely ? CLOSELY.hold : HOLD) *
    beyond(outward, strip.yStart + row * strip.yStep, closely ? CLOSELY.drawn : DRAWN) ** 2;
  let edge = new Float32Array(features.rows).fill(usual);
  const inner = -strip.outward[0]! + usual;
  // The loom's own side may stand so near that little of the surroundings shows between it and the cloth.
  const outsideFrom = Math.min(6, 0.5 * (shownOutside(strip) - usual));
  const margins = [
    { inside: 1.6 * frame.pitch + 1, deep: inner, outsideFrom, outsideTo: 30 },
    { inside: 0.15 * frame.pitch, deep: 2.5 * frame.pitch, outsideFrom: 0.7, outsideTo: 7 },
    { inside: 0.15 * frame.pitch, deep: 2.5 * frame.pitch, outsideFrom: 0.7, outsideTo: 7 },
  ];
  for (const margin of margins) {
    const evidence = sideEvidence(strip, features, edge, margin);
    if (!evidence) break;
    edge = new Float32Array(sidePath(strip, evidence, held, 1.2));
  }
  const rough = new Float32Array(strip.rows);
  for (let r = 0; r < strip.rows; r++) {
    const place = Math.min(features.rows - 1, r / features.everyRow);
    const low = Math.floor(place);
    const high = Math.min(features.rows - 1, low + 1);
    rough[r] = edge[low]! + (edge[high]! - edge[low]!) * (place - low);
  }
  const edges = sideEdges(strip, rough, frame);
  const sign = side === 'left' ? -1 : 1;
  const window = Math.max(2, 3 * frame.planPass);
  const turns = yTop / (2 * frame.planPass);
  const chance = (FEW_TURNS * frame.planPass) / Math.max(1, turns);
  const grain = grainOf(strip, usual);
  const readings: SideReading[] = [];
  for (let y = 1; y <= yTop - 1; y += EVERY) {
    const near: number[] = [];
    const contrasts: number[] = [];
    const bands: number[] = [];
    let rows = 0;
    for (let r = 0; r < strip.rows; r++) {
      const height = strip.yStart + r * strip.yStep;
      if (Math.abs(height - y) > window) continue;
      rows++;
      if (!Number.isNaN(edges.outward[r]!)) {
        near.push(strip.guide[r]! + sign * edges.outward[r]!);
        contrasts.push(edges.contrast[r]!);
        bands.push(edges.band[r]!);
      }
    }
    if (near.length < 0.4 * rows || near.length < 3) {
      readings.push({ y, x: null });
      continue;
    }
    // Neighbouring rows share a float: each float is one reading.
    const floats = Math.max(1, (near.length * strip.yStep) / (2 * frame.planPass));
    const contrast = median(contrasts);
    // What hardly differs from its surroundings is believed only where the outer end says the edge should be.
    if (contrast < PALE && beyond(sign * (median(near) - guideX(y)), y, PALE_DRAWN) > 0) {
      readings.push({ y, x: null });
      continue;
    }
    const stray = Math.abs(sign * (median(near) - guideX(y)) - usual);
    const sigma = Math.hypot(
      (NOT_YET * stray) / Math.max(1, turns / DRAWS_AFTER),
      (SCALLOPS * robustSigma(near)) / Math.sqrt(floats),
      FAINT / Math.max(1, contrast),
      (GRAINY * grain) / Math.max(1, contrast),
      0.4 * median(bands),
      unsharp,
      chance,
      FLOOR,
      0.4 * frame.mmPerPx,
    );
    readings.push({ y, x: measurement(median(near), sigma, Math.round(floats), 'selvedge profile') });
  }
  const straight = readings.map((reading, i) => (strays(readings, i) ? { y: reading.y, x: null } : reading));
  return doubtJumps(oneCourse(straight, (y) => guideX(y) + sign * usual));
}

/** How much neighbouring places outside the cloth differ by grain, colour steps: the median, so hardly by what lies there. */
function grainOf(strip: SideStrip, usual: number): number {
  const { rows, columns, colours, outward } = strip;
  const differences: number[] = [];
  for (let r = 0; r < rows; r += 3) {
    for (let k = 0; k + 2 < columns; k += 3) {
      if (outward[k]! < usual + CLEAR_OUTSIDE || !strip.seen[r * columns + k] || !strip.seen[r * columns + k + 2])
        continue;
      const at = (r * columns + k) * 3;
      const apart = [0, 1, 2].map((c) => colours[at + 6 + c]! - colours[at + c]!);
      differences.push(Math.hypot(...apart) / Math.SQRT2);
    }
  }
  return differences.length > 0 ? median(differences) : 0;
}

/** How far out the surroundings show in at least half of a strip's rows, mm from the guide. */
function shownOutside(strip: SideStrip): number {
  for (let k = strip.columns - 1; k > 0; k--) {
    let seen = 0;
    for (let r = 0; r < strip.rows; r++) seen += strip.seen[r * strip.columns + k]!;
    if (seen >= strip.rows / 2) return strip.outward[k]!;
  }
  return 0;
}

/** Near a jump either of the two courses may be the wrong one, over this height, mm. */
const NEAR_JUMP = 12;
/** A selvedge moves less than this from one reading to the next, mm. */
const STEP = 0.6;

/** Widens the sigma of readings near a place where the edge found jumps sideways. */
function doubtJumps(readings: readonly SideReading[]): SideReading[] {
  const seen = readings.filter((reading) => reading.x);
  const jumps = seen.slice(1).flatMap((reading, k) => {
    const size = Math.abs(reading.x!.value - seen[k]!.x!.value) - STEP;
    return size > 0 ? [{ y: (reading.y + seen[k]!.y) / 2, size }] : [];
  });
  return readings.map((reading) => {
    if (!reading.x) return reading;
    const near = jumps.filter((jump) => Math.abs(jump.y - reading.y) <= NEAR_JUMP).map((jump) => jump.size);
    if (near.length === 0) return reading;
    return { y: reading.y, x: { ...reading.x, sigma: Math.hypot(reading.x.sigma, 0.6 * Math.max(...near)) } };
  });
}

/** Height over which a selvedge is nearly straight, mm, and how far a reading may stray from its neighbours there. */
const STRAIGHT = 24;
const STRAY = 0.9;

/**
 * Whether a reading leaves the straight course of its neighbours farther than a hand could draw the edge in within a
 * few passes: a tail or a finger lies there, not the selvedge.
 */
function strays(readings: readonly SideReading[], i: number): boolean {
  const here = readings[i]!;
  if (!here.x) return false;
  const near = readings.filter((other) => other.x && Math.abs(other.y - here.y) <= STRAIGHT);
  if (near.length < 5) return false;
  // The middle slope between all pairs: half of the neighbours may be wrong.
  const slopes: number[] = [];
  for (let a = 0; a < near.length; a++) {
    for (let b = a + 1; b < near.length; b++) {
      slopes.push((near[b]!.x!.value - near[a]!.x!.value) / (near[b]!.y - near[a]!.y));
    }
  }
  const slope = median(slopes);
  const rest = near.map((other) => other.x!.value - slope * (other.y - here.y));
  return Math.abs(here.x.value - median(rest)) > Math.max(STRAY, 2.5 * here.x.sigma);
}
