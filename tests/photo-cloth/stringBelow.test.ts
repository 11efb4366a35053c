import { describe, expect, it } from 'vitest';
import type { ClothFrame } from '../../src/core/photo/clothFrame.ts';
import type { EndStrip } from '../../src/core/photo/endStrip.ts';
import { STRING, stringBelow } from '../../src/core/photo/stringBelow.ts';

/** Rows of 0.1 mm, passes of 1 mm. */
const strip = { yStep: 0.1 } as EndStrip;
const frame = { planPass: 1 } as ClothFrame;

/** Bare string from each first row up to each second one. */
function seenAt(...runs: readonly (readonly [number, number])[]): Uint8Array {
  const visible = new Uint8Array(800);
  for (const [from, to] of runs) visible.fill(STRING, from, to);
  return visible;
}

describe('the string below where its cloth seems to stop', () => {
  it('is followed to where it goes under the cloth', () => {
    expect(Math.abs(stringBelow(strip, seenAt([420, 800]), 500, frame) - 420)).toBeLessThan(8);
  });

  it('is followed below a tail that lies across it', () => {
    expect(Math.abs(stringBelow(strip, seenAt([440, 480], [500, 800]), 500, frame) - 440)).toBeLessThan(8);
  });

  it('is not what little shows between two floats, nor what shows far down', () => {
    expect(stringBelow(strip, seenAt([470, 480], [500, 800]), 500, frame)).toBe(500);
    expect(stringBelow(strip, seenAt([380, 430], [500, 800]), 500, frame)).toBe(500);
  });
});
