import type { EndReading } from '../model/check.ts';
import { measurement } from '../model/measurement.ts';
import type { Beat } from './beat.ts';

/** Farther than this from where a float's top can lie, in passes, and the fell is in doubt. */
const ASTRAY = 0.5;
/** So many ends must agree on where float tops lie before one that doesn't is doubted. */
const FEWEST = 8;

/**
 * Doubts a fell that doesn't stand on top of a float. The beat says where floats end on every end: once in two passes,
 * a pass apart from end to end. One that lies between has most likely been read off its neighbour's float.
 */
export function doubtOddFloats(ends: readonly EndReading[], beat: Beat): EndReading[] {
  const angle = (end: EndReading): number | null =>
    end.fell ? Math.PI * (beat.passesAt(end.fell.value, end.index) + (end.index % 2)) : null;
  let cosine = 0;
  let sine = 0;
  let count = 0;
  for (const end of ends) {
    const at = angle(end);
    if (at === null) continue;
    cosine += Math.cos(at);
    sine += Math.sin(at);
    count++;
  }
  // Where the ends don't agree among themselves the floats say nothing.
  if (count < FEWEST || Math.hypot(cosine, sine) < 0.6 * count) return [...ends];
  const usual = Math.atan2(sine, cosine);
  return ends.map((end) => {
    const at = angle(end);
    if (at === null || !end.fell) return end;
    const turn = (at - usual) / (2 * Math.PI);
    const astray = Math.abs(2 * (turn - Math.round(turn)));
    if (astray <= ASTRAY) return end;
    const { value, sigma, n, source } = end.fell;
    return { ...end, fell: measurement(value, Math.hypot(sigma, 0.8 * astray * beat.pass.value), n, source) };
  });
}
