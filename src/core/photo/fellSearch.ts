import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { nearestDistances, type TwoKinds } from './nearestClass.ts';
import { FEATURES, LIKENESS, type RowFeatures, STRENGTH } from './rowFeatures.ts';
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

/** Where each end's cloth stops, as a row of its strip, with the evidence at every row (above 0 bare, below 0 cloth). */
export interface CoarseFell {
  readonly rows: readonly number[];
  readonly evidence: readonly Float32Array[];
  /** How unlike both kinds each row is, in spreads: large on things that are neither string nor cloth. */
  readonly foreign: readonly Float32Array[];
}

const ROUNDS = 2;
const SAMPLES = 240;
/** No single row may outweigh this many ordinary ones: marks, tails and shadows stay small. */
const MOST = 2.5;

/**
 * Finds roughly where the cloth stops on every end. The picture teaches itself: rows near the notches are bare for
 * certain; what is unlike them lower down is taken as cloth, and both kinds are then learnt from all ends together
 * and the stop sought again.
 */
export function coarseFell(ends: readonly EndRows[], frame: ClothFrame): CoarseFell {
  let rows = settle(ends, firstGuess(ends)).rows;
  let evidence: Float32Array[] = [];
  let foreign: Float32Array[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const sideKinds = learn(ends, rows, frame, [0, 1]);
    const stringKinds = learn(ends, rows, frame, [2]);
    if (!sideKinds || !stringKinds) break;
    foreign = [];
    // Higher up than any stop nothing is in doubt.
    const reach = Math.max(...rows) + 15 / ends[0]!.strip.yStep;
    const said = ends.map((end): ViewEvidence => {
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
          for (let s = r; s < Math.min(count, r + step); s++) {
            line[s] = says;
            if (v !== 2) strange[s]! += least;
          }
        }
        return line;
      });
      foreign.push(strange);
      return [lines[0]!, lines[1]!, lines[2]!];
    });
    ({ rows, evidence } = settle(ends, said));
  }
  return { rows, evidence, foreign };
}

/** What each view of an end says, row by row: above 0 bare, below 0 cloth. */
type ViewEvidence = readonly [Float32Array, Float32Array, Float32Array];

/**
 * Stops by both sides together, then again with less said by a side on which the neighbour is woven higher: that
 * neighbour's floats and shade lie over the gap; where both are, the string itself decides. The outer side of an
 * outer end counts half, as the cloth may have drawn in past it.
 */
function settle(ends: readonly EndRows[], said: readonly ViewEvidence[]): { rows: number[]; evidence: Float32Array[] } {
  let rows: number[] | null = null;
  let evidence: Float32Array[] = [];
  for (let sweep = 0; sweep < 3; sweep++) {
    const before: readonly number[] | null = rows;
    evidence = ends.map((end, i) => {
      const [left, right, string] = said[i]!;
      const neighbour = (place: number, step: number): number =>
        before && ends[place]?.end === end.end + step ? before[place]! : -1;
      const leftStop = neighbour(i - 1, -1);
      const rightStop = neighbour(i + 1, 1);
      const outerLeft = i === 0 ? 0.5 : 1;
      const outerRight = i === ends.length - 1 ? 0.5 : 1;
      return left.map((value, r) => {
        const hiddenLeft = leftStop > r;
        const hiddenRight = rightStop > r;
        const weightLeft = hiddenLeft ? 0.1 : outerLeft;
        const weightRight = hiddenRight ? 0.1 : outerRight;
        const weightString = hiddenLeft && hiddenRight ? 0.8 : 0.2;
        const sum = value * weightLeft + right[r]! * weightRight + string[r]! * weightString;
        return sum / (weightLeft + weightRight + weightString);
      });
    });
    rows = ends.map((end, i) => bestStop(evidence[i]!, baseRow(end.strip), end.bareFrom));
  }
  return { rows: rows ?? [], evidence };
}

const baseRow = (strip: EndStrip): number => Math.max(0, Math.round(-strip.yStart / strip.yStep));

/** The row below which cloth and above which bare explains the evidence best. */
export function bestStop(evidence: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let r = from; r < to; r++) sum += evidence[r]!;
  let best = sum;
  let row = from;
  for (let r = from; r < to; r++) {
    sum -= 2 * evidence[r]!;
    if (sum > best) {
      best = sum;
      row = r + 1;
    }
  }
  return row;
}

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

function learn(
  ends: readonly EndRows[],
  stops: readonly number[],
  frame: ClothFrame,
  views: readonly number[],
): TwoKinds | null {
  const bare: number[] = [];
  const cloth: number[] = [];
  const bareRows: [number, number][] = [];
  const clothRows: [number, number][] = [];
  ends.forEach((end, i) => {
    const pass = frame.planPass / end.strip.yStep;
    const stop = stops[i]!;
    const clothTop = stop - Math.min(2 * pass, (stop - baseRow(end.strip)) * 0.3);
    for (let r = baseRow(end.strip); r < clothTop; r++) if (end.strip.seen[r]) clothRows.push([i, r]);
    // What lies just above the fell tells more than what lies far off.
    const reach = Math.min(end.strip.rows, Math.max(end.bareFrom + 40, stop + Math.round(60 / end.strip.yStep)));
    for (let r = Math.round(stop + 2.5 * pass); r < reach; r++) if (end.strip.seen[r]) bareRows.push([i, r]);
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
  return { size: FEATURES, first: Float32Array.from(bare), second: Float32Array.from(cloth), scale };
}
