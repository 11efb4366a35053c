import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namedStrings } from '../../bench/namedStrings.ts';
import { compareReading } from '../../src/core/compare/compareReading.ts';
import { stringFlags } from '../../src/core/compare/stringFlags.ts';
import type { EndReading, LoomReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import { sampleCheck } from '../pdf/sampleCheck.ts';
import { harbourLantern } from '../pdf/samplePiece.ts';
import { SeededRandom } from '../virtual-weaver/seededRandom.ts';

const piece = harbourLantern();
const { reading } = sampleCheck();

interface Warp {
  readonly bow?: (end: number) => number | null;
  readonly sigma?: number;
  readonly runsTo?: Readonly<Record<number, number | null>>;
  /** Ends whose notch is seen empty. */
  readonly empty?: readonly number[];
}

const strung = ({ bow = () => 0, sigma = 0.1, runsTo = {}, empty = [] }: Warp): LoomReading => ({
  ...reading,
  endsCounted: piece.warp.ends - empty.length,
  ends: reading.ends.map((end): EndReading => {
    const value = bow(end.index);
    const to = runsTo[end.index];
    return {
      ...end,
      bow: value === null ? null : measurement(value, sigma, 60, 'bare string'),
      runsTo: to === undefined ? end.index : to,
      notchX: empty.includes(end.index) ? null : end.notchX,
    };
  }),
});
const said = (warp: Warp) => namedStrings(stringFlags(strung(warp), piece));

describe('slack strings', () => {
  it('are named by number, with the side they bow to and by how much', () => {
    const [flag, ...others] = stringFlags(strung({ bow: (end) => (end === 7 ? 2.14 : 0.1 * (end % 3)) }), piece);
    expect(others).toEqual([]);
    expect(flag).toMatchObject({ kind: 'slack', side: 'left', ends: [7] });
    expect(flag!.message.mm).toMatch(
      /^End 8 bows to the right above the cloth\. Up to 2\.\d mm to one side, give or take 0\.\d\./,
    );
    // Out is away from the middle: to the right on the left half is in.
    expect(flag!.deviationMm).toBeCloseTo(-2.05, 1);
    const end = reading.ends[7]!;
    expect(flag!.xMm).toBeCloseTo((end.xAtFell!.value + end.notchX!.value) / 2 + 2.14, 3);
    const bar = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
    expect(flag!.yMm).toBeCloseTo(((end.fell?.value ?? Number.NaN) + bar) / 2, 3);
  });

  it('are said once where neighbours are slack together', () => {
    const { slack } = said({ bow: (end) => (end >= 20 && end <= 22 ? -1.5 - 0.1 * end : 0) });
    expect(slack).toEqual([20, 21, 22]);
    expect(stringFlags(strung({ bow: (end) => ([3, 4, 9].includes(end) ? 2 : 0) }), piece).length).toBe(2);
  });

  it('are none in twenty warps of taut strings, whatever a lens bends alike', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = new SeededRandom(seed);
      const common = random.between(-2, 2);
      const growing = random.between(-0.1, 0.1);
      const bows = reading.ends.map((end) => common + growing * end.index + random.between(-0.3, 0.3));
      expect(said({ bow: (end) => bows[end]! })).toEqual({ slack: [], crossed: [] });
    }
  });

  it('are found beside what a lens bends alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: piece.warp.ends - 1 }),
        fc.constantFrom(-1.8, 1.8),
        (common, slack, by) => {
          expect(said({ bow: (end) => common + 0.02 * end + (end === slack ? by : 0) }).slack).toEqual([slack]);
        },
      ),
    );
  });

  it('are not told where the photograph can’t tell, or too few strings were followed', () => {
    expect(said({ bow: (end) => (end === 7 ? 2 : 0), sigma: 0.8 }).slack).toEqual([]);
    expect(said({ bow: (end) => (end > 6 ? null : end === 3 ? 2 : 0) }).slack).toEqual([]);
  });
});

describe('strings in another’s notch', () => {
  it('are said once where two changed places, and nothing of a slack string with them', () => {
    const flags = stringFlags(strung({ runsTo: { 4: 5, 5: 4 } }), piece);
    expect(flags.map(({ message }) => message.mm)).toEqual(['Ends 5 and 6 cross between the cloth and the top bar.']);
    expect(flags[0]!.advice).toContain('change places');
    expect(flags[0]!.ends).toEqual([4, 5]);
  });

  it('are called crossed where only one was seen to run there and the other’s course wasn’t', () => {
    expect(said({ runsTo: { 4: 5, 5: null } }).crossed).toEqual([4, 5]);
    expect(said({ runsTo: { 6: 5, 5: null } }).crossed).toEqual([5, 6]);
  });

  it('are not counted missing where the string hangs beside its own empty notch', () => {
    const warp: Warp = { runsTo: { 4: 5 }, empty: [4] };
    const { flags } = compareReading(strung(warp), piece);
    const messages = flags.map(({ message }) => message.mm);
    expect(messages).toContain('End 5 hangs in the notch of end 6.');
    expect(flags.map(({ kind }) => kind)).not.toContain('count');
    expect(compareReading(strung({ ...warp, runsTo: { 4: null } }), piece).flags.map(({ kind }) => kind)).toContain(
      'count',
    );
  });

  it('are shown from near where they are missing, by the place of their bare part', () => {
    const warp: Warp = { empty: [4], runsTo: { 4: null } };
    const flag = compareReading(strung(warp), piece).flags.find(({ kind }) => kind === 'count');
    const end = reading.ends[4]!;
    const notch = (4 - (piece.warp.ends - 1) / 2) * piece.loom.notchPitch;
    expect(flag).toMatchObject({ ends: [4], side: 'left' });
    expect(flag!.message.mm).toContain('End 5 may be missing or hidden.');
    expect(flag!.xMm).toBeCloseTo(((end.xAtFell?.value ?? notch) + notch) / 2, 6);
    const bar = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
    expect(flag!.yMm).toBeCloseTo((end.fell!.value + bar) / 2, 6);
    // Many at once are no matter of single strings.
    const all = { empty: [1, 2, 3, 4, 5], runsTo: { 1: null, 2: null, 3: null, 4: null, 5: null } };
    const many = compareReading(strung(all), piece).flags.find(({ kind }) => kind === 'count');
    expect(many).toMatchObject({ ends: [], yMm: null, xMm: null });
  });
});
