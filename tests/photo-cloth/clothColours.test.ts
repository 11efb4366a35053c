import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Beat } from '../../src/core/photo/beat.ts';
import { readColours } from '../../src/core/photo/clothColours.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { lantern } from '../warp/lantern.ts';

const ENDS = 18;
const PASS = 1.1;
const STEP = 0.1;
const YARNS = ['#c8b040', '#305080', '#7a3030'] as const;

/** Encoded red, green and blue as the strips carry them: lightness, red less green, the two less blue. */
function stripColour(hex: string, dim: number): [number, number, number] {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) * dim) as [
    number,
    number,
    number,
  ];
  return [(red + green + blue) / 3, red - green, (red + green) / 2 - blue];
}

/** The cloth as its floats show it: an end shows the passes that go over it, each half hiding the passes beside it. */
function clothLines(yarnOf: (end: number, pass: number) => number, passes: number, parity: 0 | 1): WeaveLine[] {
  return Array.from({ length: ENDS }, (_, end) => {
    const rows = Math.round((passes * PASS) / STEP);
    const colours = new Float32Array(rows * 3);
    for (let r = 0; r < rows; r++) {
      const count = (r * STEP) / PASS;
      const lowest = (end + parity) % 2;
      const nearest = lowest + 2 * Math.round((count - 0.5 - lowest) / 2);
      const pass = Math.max(lowest, Math.min(nearest, passes - 1 - ((passes - 1 - lowest) % 2)));
      const dim = 0.75 + 0.25 * Math.cos(Math.PI * (count - 0.5 - pass));
      colours.set(stripColour(YARNS[yarnOf(end, pass)]!, dim), r * 3);
    }
    return { end, rows, yStep: STEP, colours };
  });
}

const beatOf = (parity: 0 | 1, baseOff: number): Beat => ({
  pass: { value: PASS, sigma: 0.01, n: 1, source: 'drawn' },
  rows: [],
  passesAt: (y) => y / PASS + baseOff,
  evenCrest: (0.5 + parity + baseOff + 2) % 2,
});

const piece = {
  ...lantern(),
  yarns: YARNS.map((colour, index) => ({ ...lantern().yarns[0]!, name: `yarn ${index}`, colour })),
  warp: { ...lantern().warp, ends: ENDS },
};

describe('colours of woven cells', () => {
  it('tells every cell, those under an end too, wherever the header ends and whichever ends the first pass goes over', () => {
    const headers = fc.integer({ min: 1, max: 9 });
    const parities = fc.constantFrom<0 | 1>(0, 1);
    fc.assert(
      fc.property(headers, parities, fc.double({ min: -0.4, max: 0.4, noNaN: true }), (header, parity, baseOff) => {
        const yarnOf = (end: number, pass: number): number => {
          if (pass < header) return 1;
          // An area that steps in by an end each turn from the header up.
          const turn = Math.floor(pass / 2) - Math.ceil(header / 2);
          return turn >= 0 && end >= 3 + turn && end < 16 ? 2 : 0;
        };
        const reading = readColours(clothLines(yarnOf, 24, parity), beatOf(parity, baseOff), piece, yarnOf);
        const wrong: string[] = [];
        for (let pass = 0; pass < 24; pass++) {
          for (let end = 0; end < ENDS; end++) {
            if (reading!.rows[pass]![end] !== yarnOf(end, pass)) wrong.push(`${end}, ${pass}`);
          }
        }
        expect(wrong).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('takes a float between two areas that shows both for one of them, not for a third yarn', () => {
    const yarnOf = (end: number): number => (end < 8 ? 0 : 1);
    const lines = clothLines(yarnOf, 20, 0);
    const mixed = lines.map((line) => {
      if (line.end !== 8) return line;
      const colours = line.colours.map((value, i) => 0.45 * lines[7]!.colours[i]! + 0.55 * value);
      return { ...line, colours };
    });
    const reading = readColours(mixed, beatOf(0, 0), piece, yarnOf);
    expect(reading!.rows.every((row) => row.every((yarn, end) => yarn === yarnOf(end) || end === 8))).toBe(true);
    expect(reading!.rows.map((row) => row[8])).not.toContain(2);
  });

  it('reads nothing where too few floats are seen', () => {
    expect(
      readColours(
        clothLines(() => 0, 1, 0),
        beatOf(0, 0),
        piece,
        () => 0,
      ),
    ).toBeNull();
  });
});
