import type { EndReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import type { Beat } from '../../src/core/photo/beat.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';

/** Height of a pass in a made-up cloth, mm. */
export const pass = 1.2;
/** An even beat, floats of even ends with a crest at the base. */
export const beat: Beat = {
  pass: measurement(pass, 0.01, 10, 'test'),
  rows: [],
  passesAt: (y) => y / pass,
  evenCrest: 0,
};
const yStep = 0.2;

/** What the floats of an end look like at a height: a swing once in two passes, a pass later on odd ends. */
export const floats = (end: number, y: number, swing = 15, rhythm = 1): number =>
  swing * Math.cos(Math.PI * ((rhythm * y) / pass + end));

/**
 * Lightness up one end to a height, with a little grain.
 * @param seen what is seen there beside the yarn's own lightness.
 */
export function wovenLine(end: number, top: number, seen: (y: number) => number, light = 120, grain = 1.5): WeaveLine {
  const rows = Math.round(top / yStep);
  const colours = new Float32Array(rows * 3);
  for (let r = 0; r < rows; r++) colours[r * 3] = light + seen(r * yStep) + grain * Math.sin(12.9 * r + 78.2 * end);
  return { end, rows, yStep, colours };
}

/** Ends that were all read alike. */
export const endsAt = (count: number, fell: number): EndReading[] =>
  Array.from({ length: count }, (_, index) => ({
    index,
    seen: true,
    why: null,
    notchX: null,
    fell: measurement(fell as Mm, 0.2, 1, 'test'),
    xAtFell: measurement((5 * index) as Mm, 0.1, 1, 'test'),
    bow: null,
    runsTo: index,
  }));
