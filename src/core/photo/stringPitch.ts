import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import { boxMean } from './statistics.ts';

const STEP = 0.2;

/**
 * How far apart the strings stand near the top bar, told by the picture alone: the colours along the bar, less their slow
 * changes, agree with themselves moved aside by a whole pitch (autocorrelation).
 * @param toPhoto loom mm to photo px, from things other than the strings.
 * @returns mm, or null when nothing repeats clearly.
 */
export function stringPitch(
  photo: Photo,
  toPhoto: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
): number | null {
  const { pitch, openingWidth, openingHeight } = expected;
  const half = openingWidth / 2 - 4;
  const count = Math.floor((2 * half) / STEP);
  const channels = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  let rows = 0;
  for (let depth = 5; depth <= 25; depth += 2) {
    const line = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
    let inside = true;
    for (let k = 0; k < count && inside; k++) {
      const { x, y } = toPhoto(-half + k * STEP, openingHeight - depth);
      const column = Math.round(x);
      const row = Math.round(y);
      inside = column >= 0 && row >= 0 && column < photo.width && row < photo.height;
      if (!inside) break;
      const at = (row * photo.width + column) * 3;
      for (let c = 0; c < 3; c++) line[c]![k] = photo.rgb[at + c]!;
    }
    if (!inside) continue;
    rows++;
    line.forEach((values, c) => {
      const slow = boxMean(values, Math.round((0.75 * pitch) / STEP));
      for (let k = 0; k < count; k++) channels[c]![k]! += values[k]! - slow[k]!;
    });
  }
  if (rows < 4) return null;
  const likeness = (lag: number): number => {
    const whole = Math.floor(lag / STEP);
    const share = lag / STEP - whole;
    let both = 0;
    let own = 0;
    for (const values of channels) {
      for (let k = 0; k + whole + 1 < count; k++) {
        const moved = values[k + whole]! * (1 - share) + values[k + whole + 1]! * share;
        both += values[k]! * moved;
        own += (values[k]! ** 2 + moved ** 2) / 2;
      }
    }
    return own > 0 ? both / own : 0;
  };
  const peaks: { lag: number; value: number }[] = [];
  const lags = Array.from({ length: Math.floor((1.5 * pitch) / 0.1) }, (_, k) => 0.45 * pitch + 0.1 * k);
  const values = lags.map(likeness);
  for (let k = 1; k + 1 < lags.length; k++) {
    if (values[k]! > values[k - 1]! && values[k]! >= values[k + 1]!) peaks.push({ lag: lags[k]!, value: values[k]! });
  }
  const most = Math.max(0, ...peaks.map((peak) => peak.value));
  if (most < CLEAR) return null;
  let found = peaks.find((peak) => peak.value > 0.8 * most)!.lag;
  // Several pitches together tell one more finely.
  for (const times of [2, 4, 7]) {
    let best = { lag: found, value: -1 };
    for (let off = -0.4; off <= 0.4; off += 0.05) {
      const lag = found + off / times;
      const value = likeness(lag * times);
      if (value > best.value) best = { lag, value };
    }
    if (best.value < 0.5 * CLEAR) break;
    found = best.lag;
  }
  return found;
}

/** Likeness at one pitch that stripes of a table behind thin strings don't reach. */
const CLEAR = 0.35;
