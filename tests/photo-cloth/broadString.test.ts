import { describe, expect, it } from 'vitest';
import { broadUpTo } from '../../src/core/photo/broadString.ts';
import type { ClothFrame } from '../../src/core/photo/clothFrame.ts';
import type { LoomSampler } from '../../src/core/photo/sampleLoom.ts';

type Colour = readonly [number, number, number];
const STRING: Colour = [200, 20, 30];
const TABLE: Colour = [120, -20, -30];

const frame = {
  pitch: 10,
  planPass: 2,
  endHalf: 1.5,
  baseY: 40,
  centreX: 0,
  openingHeight: 300,
  mmPerPx: 0.3,
} as ClothFrame;
const BARE_FROM = 60;

/** One end at x = 0: floats of `weft` up to `woven`, bare string above; `line` is a stripe of the table in the string's colour. */
function sampler(woven: number, weft: Colour, line: (y: number) => boolean = () => false): LoomSampler {
  const read: LoomSampler['read'] = (x, loomY, out, at) => {
    const y = loomY - frame.baseY;
    const half = y < woven ? 0.42 * frame.pitch : frame.endHalf;
    const colour = Math.abs(x) < half ? (y < woven ? weft : STRING) : line(y) ? STRING : TABLE;
    out.set(colour, at);
    return true;
  };
  return { read } as LoomSampler;
}

const upTo = (one: LoomSampler, sides: readonly ('left' | 'right')[] = ['left', 'right']) =>
  broadUpTo(one, frame, () => 0, BARE_FROM, sides);

describe('what seems a bare string', () => {
  it('is a float of the string’s colour as far up as it is too broad', () => {
    expect(Math.abs(upTo(sampler(84, STRING)) - 84)).toBeLessThan(2 * frame.planPass);
    expect(Math.abs(upTo(sampler(84, STRING), ['right']) - 84)).toBeLessThan(2 * frame.planPass);
    expect(Math.abs(upTo(sampler(84, [150, 15, 22])) - 84)).toBeLessThan(2 * frame.planPass);
  });

  it('is a string where it is no broader, where a stripe of its colour lies behind it, and where both sides are hidden', () => {
    expect(upTo(sampler(0, STRING))).toBe(BARE_FROM);
    expect(upTo(sampler(0, STRING, (y) => y > 55 && y < 80))).toBe(BARE_FROM);
    expect(upTo(sampler(84, STRING), [])).toBe(BARE_FROM);
  });

  it('is not spoken of where what is broad has another colour: that is told elsewhere', () => {
    expect(upTo(sampler(84, [60, 90, -40]))).toBe(BARE_FROM);
  });
});
