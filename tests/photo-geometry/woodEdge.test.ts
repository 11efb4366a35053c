import { describe, expect, it } from 'vitest';
import { edgePoints } from '../../src/core/photo/edgePoints.ts';
import type { ColourRaster } from '../../src/core/photo/reduce.ts';

/** Colours down the picture: wood, the shadow it throws, the table beside it; blended over a pixel where they meet. */
const WOOD = [134, 97, 73] as const;
const SHADOW = [150, 25, 85] as const;
const TABLE = [240, 50, 150] as const;
const WOOD_ENDS = 30.3;
const SHADOW_ENDS = 36.6;

function bands(wood: readonly number[], shadow: readonly number[], table: readonly number[]): ColourRaster {
  const [width, height] = [40, 70];
  const channels = [0, 1, 2].map((c) =>
    Float32Array.from({ length: width * height }, (_, k) => {
      const y = Math.floor(k / width);
      const past = (edge: number) => Math.max(0, Math.min(1, y - edge + 0.5));
      const lit = shadow[c]! + past(SHADOW_ENDS) * (table[c]! - shadow[c]!);
      return wood[c]! + past(WOOD_ENDS) * (lit - wood[c]!);
    }),
  );
  return { width, height, channels: channels as unknown as ColourRaster['channels'] };
}

/** A millimetre is two pixels; the wood is seen 5 mm inward of where its edge is expected. */
const down = (value: number, row: number) => ({ x: row, y: 2 * value });
const columns = Array.from({ length: 30 }, (_, k) => k + 5);
const meanY = (points: readonly { py: number }[]) => points.reduce((sum, { py }) => sum + py, 0) / points.length;

describe('the outer edge of the wood', () => {
  it('is where wood ends, though its shadow steps more', () => {
    const picture = bands(WOOD, SHADOW, TABLE);
    const anyStep = edgePoints(picture, 1, down, 16.5, 3.5, columns);
    expect(Math.abs(meanY(anyStep) - SHADOW_ENDS)).toBeLessThan(0.3);
    const ofWood = edgePoints(picture, 1, down, 16.5, 3.5, columns, 10);
    expect(ofWood.length).toBe(columns.length);
    expect(Math.abs(meanY(ofWood) - WOOD_ENDS)).toBeLessThan(0.3);
  });

  it('is found without a shadow where it was', () => {
    const picture = bands(WOOD, TABLE, TABLE);
    const ofWood = edgePoints(picture, 1, down, 16.5, 3.5, columns, 10);
    expect(Math.abs(meanY(ofWood) - WOOD_ENDS)).toBeLessThan(0.3);
  });

  it('is nowhere on a table that looks the same on both sides', () => {
    expect(edgePoints(bands(WOOD, WOOD, WOOD), 1, down, 16.5, 3.5, columns, 10)).toEqual([]);
  });
});
