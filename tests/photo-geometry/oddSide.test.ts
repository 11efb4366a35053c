import { describe, expect, it } from 'vitest';
import type { Expected } from '../../src/core/photo/expected.ts';
import { oddSide } from '../../src/core/photo/oddSide.ts';
import type { ColourRaster } from '../../src/core/photo/reduce.ts';

const BAR = 25;
const expected = {
  openingWidth: 200,
  openingHeight: 150,
  bar: BAR,
  stringDiameter: 2,
  pitch: 6,
  notches: 32,
  firstNotch: 6,
  ends: 20,
} as Expected;
const [WIDTH, HEIGHT] = [320, 280];
const toSmall = (x: number, y: number) => ({ x: WIDTH / 2 + x, y: HEIGHT - 70 - y });
const WOOD = [215, 180, 140];
const CARD = [220, 205, 170];

/** A frame whose bottom bar lies `lower` mm below where the plan has it, with cardboard behind the strings above it. */
function frame(table: readonly number[], lower: number): ColourRaster {
  const channels = [0, 1, 2].map(() => new Float32Array(WIDTH * HEIGHT)) as unknown as ColourRaster['channels'];
  for (let row = 0; row < HEIGHT; row++) {
    for (let column = 0; column < WIDTH; column++) {
      const x = Math.abs(column - WIDTH / 2);
      const y = HEIGHT - 70 - row;
      const inside = x < 100 && y > -lower && y < 150;
      const wood = !inside && x < 100 + BAR && y > -lower - BAR && y < 150 + BAR;
      const colour = wood ? WOOD : x < 64 && y < 20 && inside ? CARD : table;
      const grain = ((row * 7 + column * 13) % 5) - 2;
      channels.forEach((channel, c) => {
        channel[row * WIDTH + column] = colour[c]! + grain;
      });
    }
  }
  return { width: WIDTH, height: HEIGHT, channels };
}

describe('the side of a frame where there is table instead of wood', () => {
  it('is none of a frame as planned, on a dark table or a light one', () => {
    expect(oddSide(frame([90, 70, 60], 0), toSmall, expected)).toBeNull();
    expect(oddSide(frame([240, 238, 235], 0), toSmall, expected)).toBeNull();
  });

  it('is one beyond which the wood only begins, though cardboard of the wood’s colour lies before it', () => {
    expect(oddSide(frame([90, 70, 60], BAR), toSmall, expected)).toBe('bottom');
  });

  it('is one beyond which the table goes on', () => {
    expect(oddSide(frame([90, 70, 60], 2 * BAR), toSmall, expected)).toBe('bottom');
  });
});
