import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBeat } from '../../src/core/photo/beat.ts';
import type { ClothFrame } from '../../src/core/photo/clothFrame.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';

const frame = (planPass: number): ClothFrame => ({
  ends: 21,
  pitch: 6,
  planPass,
  planHeight: 200,
  headerPasses: 4,
  endHalf: 1,
  stringsPerEnd: 1,
  baseY: 50,
  centreX: 0,
  openingHeight: 400,
  openingWidth: 300,
  mmPerPx: 0.2,
  endX: (end) => (end - 10) * 6,
});

/** Lightness up the ribs of a cloth: each end's floats two passes high, neighbours a pass apart. */
function wovenLines(passAt: (y: number) => number, top: number, evenFirst: boolean, contrast: number): WeaveLine[] {
  const yStep = 0.15;
  const rows = Math.floor(top / yStep);
  return Array.from({ length: 21 }, (_, end) => {
    const colours = new Float32Array(rows * 3);
    for (let r = 0; r < rows; r++) {
      const shift = (end % 2 === 0) === evenFirst ? 0.5 : 1.5;
      // A second wave of one pass, as real floats have, must not be taken for the beat.
      const angle = Math.PI * (passAt(r * yStep) - shift);
      colours[r * 3] = 120 + contrast * Math.cos(angle) + 0.6 * contrast * Math.cos(2 * angle) + 3 * Math.sin(r * end);
    }
    return { end, rows, yStep, colours };
  });
}
const unscaled = { enlarged: 0, baseAt: 0, footX: 0, scaleSigma: 0.0002 };

describe('beat', () => {
  it('reads an even pass height whatever the plan says', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.78, max: 1.3, noNaN: true }), fc.boolean(), (factor, evenFirst) => {
        const pass = 1.1 * factor;
        const beat = readBeat(
          wovenLines((y) => y / pass, 60, evenFirst, 12),
          frame(1.1),
          unscaled,
        );
        expect(beat).not.toBeNull();
        expect(Math.abs(beat!.pass.value / pass - 1)).toBeLessThan(0.006);
        expect(Math.abs(beat!.evenCrest - (evenFirst ? 0.5 : 1.5))).toBeLessThan(0.35);
        expect(Math.abs(beat!.passesAt(40) - 40 / pass)).toBeLessThan(0.35);
      }),
      { numRuns: 25 },
    );
  });

  it('follows a beat that drifts', () => {
    // 1.0 mm at the base, 1.2 mm at 80 mm.
    const passAt = (y: number) => (Math.log(1 + (0.2 * y) / 80) * 80) / 0.2;
    const beat = readBeat(wovenLines(passAt, 80, true, 12), frame(1), unscaled)!;
    expect(Math.abs(beat.pass.value / (80 / passAt(80)) - 1)).toBeLessThan(0.01);
    expect(beat.rows[0]!.pass.value).toBeLessThan(beat.rows[beat.rows.length - 1]!.pass.value - 0.1);
  });

  it('says nothing where there are no floats to see', () => {
    expect(
      readBeat(
        wovenLines((y) => y, 60, true, 0),
        frame(1),
        unscaled,
      ),
    ).toBeNull();
    expect(readBeat([], frame(1), unscaled)).toBeNull();
  });
});
