import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trackLine } from '../../src/core/photo/trackLine.ts';

describe('course of a bare end', () => {
  it('goes through straight strings and on below them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        (at, lean) => {
          const points = Array.from({ length: 40 }, (_, k) => ({
            y: 200 + 4 * k,
            x: at + lean * (4 * k),
            sigma: 0.05,
          }));
          const line = trackLine(points)!;
          expect(line.x(180)).toBeCloseTo(at - 20 * lean, 3);
          expect(line.sigma(100)).toBeGreaterThan(line.sigma(280));
        },
      ),
    );
  });

  it('needs two points', () => {
    expect(trackLine([{ y: 1, x: 1, sigma: 0.1 }])).toBeNull();
  });
});
