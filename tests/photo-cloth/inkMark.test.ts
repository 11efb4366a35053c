import { describe, expect, it } from 'vitest';
import type { ClothFrame } from '../../src/core/photo/clothFrame.ts';
import type { EndStrip } from '../../src/core/photo/endStrip.ts';
import { gapEdge } from '../../src/core/photo/gapCover.ts';

const TABLE = [200, 120, 60] as const;
const STRING = [235, 230, 215] as const;
const INK = [35, 20, 12] as const;
const WEFT = [90, 30, 190] as const;

/** A single string of 1.2 mm every 4 mm, woven up to 20 mm in passes of 0.65 mm. */
const frame: ClothFrame = {
  ends: 10,
  pitch: 4,
  planPass: 0.65,
  planHeight: 100,
  headerPasses: 3,
  endHalf: 0.6,
  stringsPerEnd: 1,
  baseY: 40,
  centreX: 0,
  openingHeight: 300,
  openingWidth: 200,
  mmPerPx: 0.3,
  endX: (end) => end * 4,
};
const FELL = 20;
const MARK_TOP = 22.6;

/** @param lying what lies on the string between fell and mark's top, and `beside` it. */
function strip(lying: readonly number[], beside: readonly number[]): EndStrip {
  const [columns, rows, yStep] = [17, 400, 0.1];
  const across = Float32Array.from({ length: columns }, (_, k) => ((k - 8) / 8) * 1.84);
  const colours = new Float32Array(columns * rows * 3);
  for (let r = 0; r < rows; r++) {
    const y = r * yStep;
    for (let k = 0; k < columns; k++) {
      const on = Math.abs(across[k]!) <= frame.endHalf;
      const bare = on ? STRING : TABLE;
      const colour = y <= FELL ? WEFT : y <= MARK_TOP ? (on ? lying : beside) : bare;
      // A little grain, the same every time.
      const grain = ((r * 7 + k * 13) % 5) - 2;
      for (let c = 0; c < 3; c++) colours[(r * columns + k) * 3 + c] = colour[c]! + grain;
    }
  }
  return { columns, rows, across, yStart: 0, yStep, colours, seen: new Uint8Array(rows).fill(1) };
}

const below = (lying: readonly number[], beside: readonly number[]) =>
  gapEdge(strip(lying, beside), MARK_TOP, frame, ['left', 'right'], false);

describe('what ends above the cloth', () => {
  it('is an ink mark of several passes where the gaps beside it are open: the fell lies below it', () => {
    const fell = below(INK, TABLE);
    expect(fell).not.toBeNull();
    expect(Math.abs(fell! - FELL)).toBeLessThan(0.5);
  });

  it('is cloth where the gaps are covered, in its own yarn or another', () => {
    expect(below(WEFT, WEFT)).toBeNull();
    expect(below([40, 160, 90], [40, 160, 90])).toBeNull();
  });

  it('may be cloth where all of it has the colour of the table', () => {
    expect(below(TABLE, TABLE)).toBeNull();
  });
});
