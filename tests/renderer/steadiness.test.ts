import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/renderer/screens/check/frameQuality.ts';
import { afterPicture, isSteady, unsteady } from '../../src/renderer/screens/check/steadiness.ts';

/** When the picture is taken by itself, with a new picture every `every` ms; null when never. */
function takenAt(pictures: readonly Advice[], every: number): number | null {
  let run = unsteady;
  for (const [index, advice] of pictures.entries()) {
    run = afterPicture(run, advice, index * every);
    if (isSteady(run, index * every)) return index * every;
  }
  return null;
}
const good = (count: number) => Array.from({ length: count }, (): Advice => 'good');

describe('the steady trigger', () => {
  it('waits about as long whatever the rate of pictures, and never waits for many of them', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 3_000, noNaN: true }), (every) => {
        const at = takenAt(good(400), every)!;
        expect(at).toBeGreaterThanOrEqual(1_200);
        expect(at).toBeLessThanOrEqual(Math.max(1_200 + every, 2 * every));
      }),
    );
  });
  it('never takes while fewer than three pictures in a row were good', () => {
    const shaky = Array.from({ length: 60 }, (_, at): Advice => (at % 3 === 2 ? 'moving' : 'good'));
    expect(takenAt(shaky, 900)).toBeNull();
  });
  it('begins anew after a hand has passed', () => {
    expect(takenAt([...good(5), 'moving', ...good(20)], 200)).toBe(6 * 200 + 1_200);
  });
});
