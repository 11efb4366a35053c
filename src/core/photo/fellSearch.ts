import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { type Layers, layersOf } from './layers.ts';
import { nearestDistances, type TwoKinds, twoKinds } from './nearestClass.ts';
import { FEATURES, LIKENESS, RIPPLE, type RowFeatures, STRENGTH } from './rowFeatures.ts';
import { quantile } from './statistics.ts';

/** One end's strip with what its rows look like. */
export interface EndRows {
  readonly end: number;
  readonly strip: EndStrip;
  /** Left side, right side, the string alone. */
  readonly views: readonly [RowFeatures, RowFeatures, RowFeatures];
  /** First row that is bare for certain. */
  readonly bareFrom: number;
}

/** Where each end's cloth stops, roughly. */
export interface CoarseFell {
  readonly layers: readonly Layers[];
}

const ROUNDS = 2;
const SAMPLES = 240;
/** No single row may outweigh this many ordinary ones: marks, tails and shadows stay small. */
const MOST = 2.5;
/** Beyond this distance from all that was learnt, in spreads, a row counts as unknown. */
const UNKNOWN = 1.5;
/** Something lying on the warp must explain at least this much height, mm, to be taken for one. */
const COVER = 3;

/**
 * Finds roughly where the cloth stops on every end. The picture teaches itself: rows near the notches are bare for
 * certain; what is unlike them lower down is taken as cloth, and both kinds are then learnt from all ends together
 * and the stop sought again.
 */
export function coarseFell(ends: readonly EndRows[], frame: ClothFrame): CoarseFell {
  const byProfile = firstGuess(ends);
  let layers = settle(ends, byProfile, null);
  for (let round = 0; round < ROUNDS; round++) {
    const sideKinds = learn(ends, layers, frame, [0, 1], round);
    const stringKinds = learn(ends, layers, frame, [2], round);
    if (!sideKinds || !stringKinds) break;
    // Higher up than any stop nothing is in doubt.
    const reach = Math.max(...layers.map((one) => one.bareFrom)) + 15 / ends[0]!.strip.yStep;
    const distance: Float32Array[] = [];
    const said = ends.map((end, i): ViewEvidence => {
      const count = end.strip.rows;
      const strange = new Float32Array(count);
      // Neighbouring rows are smoothed alike: a few in every pass are enough.
      const step = Math.max(1, Math.round((0.45 * frame.planPass) / end.strip.yStep));
      const lines = end.views.map((view, v) => {
        const line = new Float32Array(count).fill(MOST);
        for (let r = 0; r < Math.min(count, reach); r += step) {
          const d = nearestDistances(v === 2 ? stringKinds : sideKinds, view.values, r * FEATURES);
          const says = Math.max(-MOST, Math.min(MOST, 3 * Math.log((d.second + 0.3) / (d.first + 0.3))));
          const least = Math.min(d.first, d.second) / 2;
          // What is unlike all that was learnt says little: a yarn first met here is left to the profile.
          const sure = 1 / (1 + (least / UNKNOWN) ** 2);
          for (let s = r; s < Math.min(count, r + step); s++) {
            line[s] = 0.75 * sure * says + 0.5 * byProfile[i]![v]![s]!;
            if (v !== 2) strange[s]! += least;
          }
        }
        return line;
      });
      distance.push(strange);
      return [lines[0]!, lines[1]!, lines[2]!];
    });
    layers = settle(ends, said, foreignRows(ends, layers, distance));
  }
  return { layers };
}

/**
 * How much each row looks like something that is neither: unlike all that was learnt, and smooth where cloth ripples
 * (a hand, a card, a comb's back).
 */
function foreignRows(
  ends: readonly EndRows[],
  layers: readonly Layers[],
  distance: readonly Float32Array[],
): Float32Array[] {
  const usual: number[] = [];
  const ripples: number[] = [];
  const ripple = (end: EndRows, r: number): number =>
    (end.views[0].values[r * FEATURES + RIPPLE]! + end.views[1].values[r * FEATURES + RIPPLE]!) / 2;
  ends.forEach((end, i) => {
    const base = baseRow(end.strip);
    const top = base + 0.8 * (layers[i]!.clothTop - base);
    for (let r = base; r < top; r += 3) {
      usual.push(distance[i]![r]!);
      ripples.push(ripple(end, r));
    }
  });
  if (usual.length < 20) return distance.map((line) => new Float32Array(line.length).fill(-2));
  const far = 1.3 * quantile(usual, 0.9);
  const smooth = quantile(ripples, 0.1);
  return ends.map((end, i) =>
    distance[i]!.map((d, r) => {
      const unlike = 2.5 * Math.log((d + 0.05) / (far + 0.05));
      return Math.max(-2, Math.min(2, Math.min(unlike, (smooth - ripple(end, r)) / 2)));
    }),
  );
}

/** What each view of an end says, row by row: above 0 bare, below 0 cloth. */
type ViewEvidence = readonly [Float32Array, Float32Array, Float32Array];

/**
 * Stops by both sides together, then again with less said by a side on which the neighbour is woven higher: that
 * neighbour's floats and shade lie over the gap; where both are, the string itself decides. The outer side of an
 * outer end counts half, as the cloth may have drawn in past it.
 */
function settle(
  ends: readonly EndRows[],
  said: readonly ViewEvidence[],
  foreign: readonly Float32Array[] | null,
): Layers[] {
  let layers: Layers[] = [];
  const evidences: Float32Array[] = [];
  for (let sweep = 0; sweep < 3; sweep++) {
    const before = layers.length > 0 ? layers.map((one) => one.clothTop) : null;
    layers = ends.map((end, i) => {
      const [left, right, string] = said[i]!;
      const neighbour = (place: number, step: number): number =>
        before && ends[place]?.end === end.end + step ? before[place]! : -1;
      const leftStop = neighbour(i - 1, -1);
      const rightStop = neighbour(i + 1, 1);
      const outerLeft = i === 0 ? 0.5 : 1;
      const outerRight = i === ends.length - 1 ? 0.5 : 1;
      const evidence = left.map((value, r) => {
        const hiddenLeft = leftStop > r;
        const hiddenRight = rightStop > r;
        const weightLeft = hiddenLeft ? 0.1 : outerLeft;
        const weightRight = hiddenRight ? 0.1 : outerRight;
        const weightString = hiddenLeft && hiddenRight ? 0.8 : 0.2;
        const sum = value * weightLeft + right[r]! * weightRight + string[r]! * weightString;
        return sum / (weightLeft + weightRight + weightString);
      });
      evidences[i] = evidence;
      const cover = (COVER * MOST) / end.strip.yStep;
      return layersOf(evidence, foreign?.[i] ?? null, baseRow(end.strip), end.bareFrom, cover);
    });
  }
  return foreign ? cutPeaks(ends, fillPits(ends, layers, evidences, foreign), evidences, foreign) : layers;
}

/** A pit this deep and one or two ends wide isn't woven: a loose tail lies there and looks like a string, mm. */
const PIT = 8;

/** Looks again, no lower than the neighbours, where one or two ends seem to stop far below both. */
function fillPits(
  ends: readonly EndRows[],
  layers: readonly Layers[],
  evidences: readonly Float32Array[],
  foreign: readonly Float32Array[],
): Layers[] {
  const filled = [...layers];
  const cover = (end: EndRows): number => (COVER * MOST) / end.strip.yStep;
  for (const width of [1, 2]) {
    for (let i = 0; i + width <= ends.length; i++) {
      const { yStep } = ends[i]!.strip;
      const sides = neighboursOf(filled, i, width);
      if (!sides) continue;
      const beside = Math.min(...sides.tops);
      const pit = Array.from({ length: width }, (_, k) => i + k);
      // The foot of a steep V is a pit too: its neighbours go on stepping down towards it.
      const deep = Math.max((sides.outer ? 1.5 : 1) * (PIT / yStep), (sides.outer ? 2.2 : 1.7) * sides.steep);
      if (!pit.every((k) => filled[k]!.clothTop < beside - deep)) continue;
      for (const k of pit) {
        const from = Math.round(beside - PIT / 2 / yStep);
        const end = ends[k]!;
        const again = layersOf(evidences[k]!, foreign[k]!, from, end.bareFrom, cover(end));
        // An outer end may be woven lower; it is filled only where a stop is seen by its neighbour.
        if (!sides.outer || again.clothTop > from + 2) filled[k] = again;
      }
    }
  }
  return filled;
}

/** One to three ends standing this far above the ends either side are looked at again, mm. */
const PEAK = 12;

/**
 * Looks again, no higher than the neighbours, where a few ends seem to go on far above them: there the table may look
 * like cloth. A tower that is woven shows no stop down there, and stays.
 */
function cutPeaks(
  ends: readonly EndRows[],
  layers: readonly Layers[],
  evidences: readonly Float32Array[],
  foreign: readonly Float32Array[],
): Layers[] {
  const cut = [...layers];
  for (const width of [1, 2, 3]) {
    for (let i = 0; i + width <= ends.length; i++) {
      const { yStep } = ends[i]!.strip;
      const sides = neighboursOf(cut, i, width);
      if (!sides) continue;
      const beside = Math.max(...sides.tops);
      const high = Math.max(PEAK / yStep, 2 * sides.steep);
      const peak = Array.from({ length: width }, (_, k) => i + k);
      if (!peak.every((k) => cut[k]!.clothTop > beside + high)) continue;
      for (const k of peak) {
        const end = ends[k]!;
        const to = Math.min(end.bareFrom, Math.round(beside + PEAK / yStep));
        const again = layersOf(evidences[k]!, foreign[k]!, baseRow(end.strip), to, (COVER * MOST) / yStep);
        if (again.clothTop < to - 3 / yStep && again.clothTop > beside - PEAK / yStep) cut[k] = again;
      }
    }
  }
  return cut;
}

/** Tops either side of a run of ends, and how steeply the ends there step; null where the run has no neighbour. */
function neighboursOf(
  layers: readonly Layers[],
  i: number,
  width: number,
): { tops: number[]; steep: number; outer: boolean } | null {
  const top = (k: number): number | null => layers[k]?.clothTop ?? null;
  const left = top(i - 1);
  const right = top(i + width);
  const tops = [left, right].filter((one) => one !== null);
  if (tops.length === 0) return null;
  const step = (a: number | null, b: number | null): number => (a === null || b === null ? 0 : Math.abs(a - b));
  const steep = Math.max(step(top(i - 2), left), step(right, top(i + width + 1)));
  return { tops, steep, outer: tops.length === 1 };
}

const baseRow = (strip: EndStrip): number => Math.max(0, Math.round(-strip.yStart / strip.yStep));

/** Where the bare string's own profile is lost: in its shape and in its strength. */
function firstGuess(ends: readonly EndRows[]): ViewEvidence[] {
  return ends.map((end) => {
    const { rows } = end.strip;
    const lines = end.views.map(({ values }) => {
      const likeness: number[] = [];
      for (let r = end.bareFrom; r < rows; r += 2) likeness.push(values[r * FEATURES + LIKENESS]!);
      const usual = Math.max(0.3, quantile(likeness, 0.3));
      const line = new Float32Array(rows);
      for (let r = 0; r < rows; r++) {
        const shape = (values[r * FEATURES + LIKENESS]! / usual - 0.62) / 0.2;
        const strength = (values[r * FEATURES + STRENGTH]! - 0.45) / 0.2;
        line[r] = Math.max(-1, Math.min(1, shape)) + Math.max(-1, Math.min(1, strength));
      }
      return line;
    });
    return [lines[0]!, lines[1]!, lines[2]!];
  });
}

/** How far above the middle height of the ends around it an end still teaches what cloth looks like, mm. */
const TRUSTED_ABOVE = 20;
/** Ends either side that say what is usual. */
const AROUND = 7;

function usualTops(layers: readonly Layers[]): number[] {
  return layers.map((_, i) =>
    quantile(
      layers.slice(Math.max(0, i - AROUND), i + AROUND + 1).map((one) => one.clothTop),
      0.5,
    ),
  );
}

function learn(
  ends: readonly EndRows[],
  layers: readonly Layers[],
  frame: ClothFrame,
  views: readonly number[],
  round: number,
): TwoKinds | null {
  const bare: number[] = [];
  const cloth: number[] = [];
  const bareRows: [number, number][] = [];
  const clothRows: [number, number][] = [];
  const usual = usualTops(layers);
  ends.forEach((end, i) => {
    const pass = frame.planPass / end.strip.yStep;
    const { bareFrom, bare: clear } = layers[i]!;
    // What was taken for cloth far above the cloth around it teaches nothing: it may be a shadow's end or a board's.
    const stop = Math.min(layers[i]!.clothTop, usual[i]! + TRUSTED_ABOVE / end.strip.yStep);
    const woven = stop - baseRow(end.strip);
    // At first the upper part is left out: a hand over the fell may have been taken for cloth.
    const upper = round === 0 && woven * end.strip.yStep > 12 ? 0.3 * woven : Math.min(2 * pass, 0.3 * woven);
    for (let r = baseRow(end.strip); r < stop - upper; r++) if (end.strip.seen[r]) clothRows.push([i, r]);
    // What lies just above the fell tells more than what lies far off.
    const reach = Math.min(end.strip.rows, Math.max(end.bareFrom + 40, bareFrom + Math.round(60 / end.strip.yStep)));
    for (let r = Math.round(bareFrom + 2.5 * pass); r < reach; r++) {
      if (end.strip.seen[r] && (r >= end.bareFrom || clear[r])) bareRows.push([i, r]);
    }
  });
  if (bareRows.length < 50 || clothRows.length < 50) return null;
  const take = (from: readonly [number, number][], into: number[]) => {
    const step = Math.max(1, from.length / SAMPLES);
    for (let s = 0; s < from.length; s += step) {
      const [i, r] = from[Math.floor(s)]!;
      const { values } = ends[i]!.views[views[Math.floor(s) % views.length]!]!;
      for (let f = 0; f < FEATURES; f++) into.push(values[r * FEATURES + f]!);
    }
  };
  take(bareRows, bare);
  take(clothRows, cloth);
  const scale = new Float32Array(FEATURES);
  for (let f = 0; f < FEATURES; f++) {
    const of = (list: readonly number[]) => {
      const column: number[] = [];
      for (let s = f; s < list.length; s += FEATURES) column.push(list[s]!);
      return Math.sqrt(
        column.reduce((sum, v) => sum + v * v, 0) / column.length -
          (column.reduce((a, b) => a + b, 0) / column.length) ** 2,
      );
    };
    scale[f] = Math.max(f === LIKENESS || f === STRENGTH ? 0.08 : 1.5, Math.min(of(bare), of(cloth)));
  }
  return twoKinds(FEATURES, Float32Array.from(bare), Float32Array.from(cloth), scale);
}
