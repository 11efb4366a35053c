import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Expected } from '../../src/core/photo/expected.ts';
import { railsSeen } from '../../src/core/photo/railsSeen.ts';
import type { ColourRaster } from '../../src/core/photo/reduce.ts';

const BAR = 25;
const expected = { openingWidth: 200, openingHeight: 150, bar: BAR, stringDiameter: 2 } as Expected;
const SCALE = 1.5;
const [WIDTH, HEIGHT] = [480, 320];
const toSmall = (x: number, y: number) => ({ x: WIDTH / 2 + SCALE * x, y: HEIGHT - 40 - SCALE * y });

/** Wood on a table, its sides `rail` mm broad and the whole `aside` mm right of where the camera has it. */
function frame(rail: number, aside: number): ColourRaster {
  const channels = [0, 1, 2].map(() => new Float32Array(WIDTH * HEIGHT)) as unknown as ColourRaster['channels'];
  for (let row = 0; row < HEIGHT; row++) {
    for (let column = 0; column < WIDTH; column++) {
      const beyond = Math.abs((column - WIDTH / 2) / SCALE - aside) - expected.openingWidth / 2;
      const share =
        Math.max(0, Math.min(1, beyond * SCALE + 0.5)) - Math.max(0, Math.min(1, (beyond - rail) * SCALE + 0.5));
      const grain = ((row * 7 + column * 13) % 5) - 2;
      const colour = [110 + 80 * share, 130 + 20 * share, 160 - 50 * share];
      channels.forEach((channel, c) => {
        channel[row * WIDTH + column] = colour[c]! + grain;
      });
    }
  }
  return { width: WIDTH, height: HEIGHT, channels };
}

describe('rails', () => {
  it('of another breadth than the bars are seen, and how far aside the frame lies', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.double({ min: 12, max: 20, noNaN: true }), fc.double({ min: 30, max: 40, noNaN: true })),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (rail, aside) => {
          const seen = railsSeen(frame(rail, aside), toSmall, expected);
          expect(seen).not.toBeNull();
          expect(Math.abs(seen!.breadth - rail)).toBeLessThan(1);
          expect(Math.abs(seen!.aside - aside)).toBeLessThan(0.7);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('as broad as the bars, and no rails at all, are left as planned', () => {
    expect(railsSeen(frame(BAR, 0), toSmall, expected)).toBeNull();
    expect(railsSeen(frame(BAR, 3), toSmall, expected)).toBeNull();
    expect(railsSeen(frame(0, 0), toSmall, expected)).toBeNull();
  });
});
