import { notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';

/**
 * How clearly the cloth begins where the plan says, under one idea of which bar is the bottom: the change of colour,
 * over strings and gaps, across the line at the base, in grey levels.
 * @param toSmall loom mm to pixels of `picture`.
 */
export function baseEvidence(
  picture: ColourRaster,
  toSmall: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
): number {
  const from = expected.base - 10;
  const step = 0.5;
  const rows = 41;
  // Colour of gaps and of strings, row by row: medians over the ends.
  const gap = rowMedians(picture, toSmall, expected, 0.5, from, step, rows);
  const string = rowMedians(picture, toSmall, expected, 0, from, step, rows);
  let best = 0;
  for (let at = 12; at <= 24; at++) {
    const change = (line: Float64Array) => {
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        let above = 0;
        let below = 0;
        for (let d = 2; d <= 8; d++) {
          above += line[(at + d) * 3 + c]!;
          below += line[(at - d) * 3 + c]!;
        }
        sum += ((above - below) / 7) ** 2;
      }
      return Math.sqrt(sum);
    };
    best = Math.max(best, change(gap) + change(string));
  }
  return best;
}

/** How far from the plan's base, mm, another beginning of the cloth is looked for. */
const ASTRAY = 40;
const ASTRAY_STEP = 4;
/** Within this the plan's own base may be a little off, mm. */
const AT_BASE = 8;

/** The clearest beginning of the cloth away from where the plan has it, up and down: as `baseEvidence`, grey levels. */
export function evidenceElsewhere(
  picture: ColourRaster,
  toSmall: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
): number {
  let best = 0;
  for (let off = AT_BASE; off <= ASTRAY; off += ASTRAY_STEP) {
    for (const base of [expected.base - off, expected.base + off]) {
      if (base < 4) continue;
      best = Math.max(best, baseEvidence(picture, toSmall, { ...expected, base }));
    }
  }
  return best;
}

function rowMedians(
  picture: ColourRaster,
  toSmall: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
  offset: number,
  from: number,
  step: number,
  rows: number,
): Float64Array {
  const out = new Float64Array(rows * 3);
  const colour = new Float64Array(3);
  for (let k = 0; k < rows; k++) {
    const values: [number[], number[], number[]] = [[], [], []];
    for (let end = 0; end < expected.ends; end++) {
      const place = toSmall(notchX(expected, expected.firstNotch + end + offset), from + k * step);
      if (!insidePicture(picture, place.x, place.y)) continue;
      sampleColour(picture, place.x, place.y, colour, 0);
      for (let c = 0; c < 3; c++) values[c]!.push(colour[c]!);
    }
    for (let c = 0; c < 3; c++) {
      const sorted = values[c]!.sort((a, b) => a - b);
      out[k * 3 + c] = sorted[sorted.length >> 1] ?? 0;
    }
  }
  return out;
}
