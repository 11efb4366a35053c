import { measurement } from '../model/measurement.ts';
import { bentCourse } from './bentCourse.ts';
import { broadUpTo } from './broadString.ts';
import type { ClothFrame } from './clothFrame.ts';
import { type EndCourse, endCourses } from './endCourses.ts';
import type { EndFell } from './endFell.ts';
import { endStrip, type StripHeights, stripHeights } from './endStrip.ts';
import { type FellEdge, fellEdge } from './fellEdge.ts';
import { doubtLoners } from './fellNeighbours.ts';
import { type CoarseFell, coarseFell, type EndRows } from './fellSearch.ts';
import { COVERED_GAP, gapCover, gapEdge, OPEN_GAP } from './gapCover.ts';
import type { Layers } from './layers.ts';
import type { StringTrack } from './loomPose.ts';
import { rippleTops } from './rippleTops.ts';
import { columnProfile, rowFeatures, smoothedUp, stripColumns, type View } from './rowFeatures.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { median } from './statistics.ts';
import { coveredAbove, stringBelow, visibleString } from './stringBelow.ts';
import type { TrackLine } from './trackLine.ts';

/** Where the fell lies can't be told better than this, mm: floats are round and hairy. */
const FLOOR = 0.1;

/** Something this high over the fell hides it, mm. */
const COVERED = 2;

/** Beside a mark on the string, or where the string has the cloth's colour, the fell is sure to this share of a pass. */
const UNSURE = 0.4;

/** The topmost float reaches no more than so many passes, and so many mm for blur, above the rough place. */
const HIGHEST = 1.35;
const HIGHEST_MM = 0.3;

/** The fells, and how unsharp the picture is. */
export interface FellReading {
  readonly fells: readonly EndFell[];
  /** What unsharpness alone may move an edge by, one sigma, mm. */
  readonly unsharp: number;
}

/** Edges of strings rise over this many pixels in a picture that is as sharp as it can be. */
const SHARP_PX = 2.2;
/** By what share of the breadth beyond that an edge may lie off: neighbouring colours run into it. */
const RUNS_INTO = 0.4;

/** Finds the fell on every end that was followed. */
export function measureFell(
  sampler: LoomSampler,
  frame: ClothFrame,
  tracks: readonly StringTrack[],
  onEnd: (done: number, of: number) => void = () => {},
): FellReading {
  const heights = stripHeights(frame);
  const found = endCourses(sampler, frame, tracks);
  const rises = found.flatMap((one) => (one?.rise ? [one.rise] : []));
  const unsharp = rises.length > 0 ? RUNS_INTO * Math.max(0, median(rises) - SHARP_PX * frame.mmPerPx) : 0;
  const known = found.flatMap((one) => one ?? []);
  if (known.length === 0) return { fells: [], unsharp };
  const straight = known.map((one, i) => {
    onEnd(i, known.length);
    return endRows(sampler, frame, heights, one);
  });
  const first = coarseFell(straight, frame);
  const ends = straight.map((end, i) => {
    const into = intoCloth(end, first.layers[i]!, known[i]!.course, frame);
    return into ? endRows(sampler, frame, heights, { ...known[i]!, course: into }) : end;
  });
  const rough = ends.every((end, i) => end === straight[i]) ? first : coarseFell(ends, frame);
  const tops = rippleTops(ends, rough.layers, frame);
  const layers = rough.layers.map((layer, i) => movedTo(layer, tops[i] ?? layer.clothTop));
  const visible = ends.map((end, i) => visibleString(end.strip, layers[i]!.clothTop, frame));
  const followed = layers.map((layer, i) => {
    const seen = visible[i];
    return movedTo(layer, seen ? stringBelow(ends[i]!.strip, seen, layer.clothTop, frame) : layer.clothTop);
  });
  const coarse: CoarseFell = {
    layers: followed.map((layer, i) => {
      const { strip } = ends[i]!;
      const y = strip.yStart + layer.clothTop * strip.yStep;
      const top = broadUpTo(sampler, frame, known[i]!.course.x, y, openSides(ends, followed, i, frame));
      return movedTo(layer, Math.round((top - strip.yStart) / strip.yStep));
    }),
  };
  const placed = ends.map((end, i) => placeFell(end, known[i]!.course, i, coarse, visible[i]!, ends, frame, unsharp));
  return { fells: doubtLoners(placed, frame.planPass), unsharp };
}

/** Where the straight course of a string leads so many pitches aside at the base, it may leave its cloth on the way there. */
const ASIDE = 0.5;

/** The course along the cloth, of an end whose straight one led out of it: there nothing like cloth is seen below it. */
function intoCloth(end: EndRows, layers: Layers, course: TrackLine, frame: ClothFrame): TrackLine | null {
  const { strip } = end;
  if ((layers.bareFrom - layers.clothTop) * strip.yStep <= Math.max(COVERED, 2.5 * frame.planPass)) return null;
  const atBase = frame.centreX + frame.endX(end.end);
  if (Math.abs(course.x(frame.baseY) - atBase) < ASIDE * frame.pitch) return null;
  return bentCourse(course, frame.baseY + strip.yStart + layers.bareFrom * strip.yStep, frame.baseY, atBase);
}

/** Layers with another top of the cloth. */
function movedTo(layer: Layers, row: number): Layers {
  const same = layer.bareFrom === layer.clothTop;
  return row === layer.clothTop
    ? layer
    : { ...layer, clothTop: row, bareFrom: same ? row : Math.max(row, layer.bareFrom) };
}

/** The sides of an end on which no neighbour is woven higher by two passes. */
function openSides(
  ends: readonly EndRows[],
  layers: readonly Layers[],
  i: number,
  frame: ClothFrame,
): ('left' | 'right')[] {
  const higher = (step: -1 | 1): boolean =>
    ends[i + step]?.end === ends[i]!.end + step &&
    layers[i + step]!.clothTop > layers[i]!.clothTop + (2 * frame.planPass) / ends[i]!.strip.yStep;
  return [...(higher(-1) ? [] : (['left'] as const)), ...(higher(1) ? [] : (['right'] as const))];
}

function endRows(
  sampler: LoomSampler,
  frame: ClothFrame,
  heights: StripHeights,
  { track, course, bareY }: EndCourse,
): EndRows {
  const strip = endStrip(sampler, frame, heights, course.x);
  // The upper half of what was followed is bare whatever the lower end of the track is.
  const middle = bareY - frame.baseY;
  const row = Math.round((middle - heights.yStart) / heights.yStep);
  const bareFrom = Math.max(4, Math.min(strip.rows - 8, row));
  const template = columnProfile(strip, bareFrom, strip.rows);
  const smooth = smoothedUp(strip, frame);
  const view = (name: View) => rowFeatures(strip, smooth, stripColumns(strip, frame, name), template, frame);
  return { end: track.end, strip, views: [view('left'), view('right'), view('string')], bareFrom };
}

function placeFell(
  end: EndRows,
  course: TrackLine,
  i: number,
  coarse: CoarseFell,
  visible: Uint8Array | null,
  ends: readonly EndRows[],
  frame: ClothFrame,
  unsharp: number,
): EndFell {
  const { strip } = end;
  const pass = frame.planPass / strip.yStep;
  const { clothTop: row, bareFrom } = coarse.layers[i]!;
  const hidden: EndFell = { end: end.end, course, fell: null, why: 'something lies over the fell here' };
  const covered = (at: number): boolean => coveredAbove(strip, at, end.bareFrom, frame);
  if (covered(row) || (bareFrom - row) * strip.yStep > Math.max(COVERED, 2.5 * frame.planPass)) return hidden;
  const sides = openSides(ends, coarse.layers, i, frame);
  // The rough place runs a little high, because rows are described with their neighbours.
  const at = (shift: number) => fellEdge(strip, row + shift * pass, frame, sides, visible);
  const highest = strip.yStart + row * strip.yStep + HIGHEST * frame.planPass + HIGHEST_MM;
  // An edge far above the rough place is that of a stripe or a shade behind the strings.
  const near = (edge: FellEdge | null): FellEdge | null => (edge && edge.y <= highest ? edge : null);
  const first = near(at(-0.3)) ?? near(at(0.7)) ?? near(at(-1.3));
  // Looked for from higher up, the same edge should be met. A second one, a float's height above, is the fell if there
  // is a float; else it is a doubt, and counts as one.
  const second = first && at(1.2);
  const apart = first && second ? second.y - first.y : 0;
  const passesApart = apart / frame.planPass;
  const covers =
    first && second && passesApart > 1.3 && passesApart < 2.8
      ? (gapCover(strip, first.y, second.y, frame, sides) ?? 0) > COVERED_GAP
      : false;
  const edge = covers ? second : first;
  const doubt = covers ? 0.25 * apart : Math.max(0, Math.abs(apart) - 0.25 * frame.planPass) / 2;
  if (!edge) {
    const why = 'the last float can’t be told from what lies above it';
    return { end: end.end, course, fell: null, why };
  }
  // Looked for up and down from the rough place, the edge of what lies farther up may have been met.
  if (covered((edge.y - strip.yStart) / strip.yStep)) return hidden;
  // Below a float's edge the gaps beside the string are covered; where they are open a mark on the string was met.
  const open = (gapCover(strip, edge.y - 1.8 * frame.planPass, edge.y, frame, sides) ?? 1) < OPEN_GAP;
  const belowMark = gapEdge(strip, edge.y, frame, sides, open);
  const y = belowMark ?? edge.y;
  const unsure = open || belowMark !== null || visible === null ? UNSURE * frame.planPass : 0;
  const sigma = Math.hypot(FLOOR, 0.3 * frame.mmPerPx, edge.sigma, doubt, unsharp, unsure);
  const fell = measurement(y, sigma, 1, 'fell change point');
  return { end: end.end, course, fell, why: null };
}
