import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothMm, mm } from '../../src/core/model/units.ts';
import { centredFirstNotch, centringVerdict, pointVerdict } from '../../src/core/warp/centring.ts';
import { clothWidth, endsForWidth } from '../../src/core/warp/endWidth.ts';
import { loomFit } from '../../src/core/warp/loomFit.ts';
import { warpLength } from '../../src/core/warp/warpLength.ts';
import { warpPlan } from '../../src/core/warp/warpPlan.ts';
import { wrapOrder } from '../../src/core/warp/wrapOrder.ts';
import { sizeFromTex, texFromCount } from '../../src/core/yarn/countSystems.ts';
import { lantern } from './lantern.ts';

const inch = 25.4;
const yards = (metresLong: number) => metresLong / 0.9144;

describe('warp length against published examples', () => {
  it('frame loom: 20 in × 8 to the inch × 14 in + 2 yd is 64 yd (webcasty.com)', () => {
    const length = warpLength({ strings: 160, run: mm(14 * inch), crossing: mm(0), knots: mm(2 * 914.4) });
    expect(Math.abs(yards(length) - 64)).toBeLessThan(0.5);
  });

  it('striped rug: 84 ends of 68 in are 160 yd as printed, ±2 (rigid-heddle book)', () => {
    const length = warpLength({ strings: 84, run: mm(68 * inch), crossing: mm(0), knots: mm(0) });
    expect(Math.abs(yards(length) - 160)).toBeLessThan(2);
  });

  it.each([
    // One warp: 40 in and 15 % of take-up, 36 in of loom waste. Two on one warp share the waste.
    [1, 82, 2.3],
    [2, 128, 3.5],
  ])('%d pieces of 36 in and 4 of fringe are %d in, %d yd (allfiberarts.com)', (pieces, long, printed) => {
    const length = warpLength({
      strings: 1,
      run: mm(pieces * 40 * 1.15 * inch),
      crossing: mm(0),
      knots: mm(36 * inch),
    });
    expect((length * 1000) / inch).toBeCloseTo(long, 9);
    expect(Math.abs(yards(length) - printed)).toBeLessThan(0.1);
  });

  it('Gobelins, a high-warp loom: 1 m of tapestry takes 1.50 m more (Deyrolle, p. 11)', () => {
    expect(warpLength({ strings: 1, run: mm(1_000), crossing: mm(0), knots: mm(1_500) })).toBeCloseTo(2.5, 12);
  });

  it('rug of 3 × 5 ft: ¾ lb of warp, ±10 % (P. Collingwood’s figure, secondary)', () => {
    // 8/5 linen doubled, 3 pairs to the inch (J. Bellairs on a class of Collingwood’s).
    const strings = 36 * 3 * 2;
    const length = warpLength({ strings, run: mm(60 * inch), crossing: mm(0), knots: mm(0) });
    const pounds =
      yards(length) / sizeFromTex('yards-per-pound', texFromCount({ system: 'linen-lea', size: 8, plies: 5 }));
    expect(Math.abs(pounds / 0.75 - 1)).toBeLessThan(0.1);
  });
});

/** Common practice, no source. */
describe('the warp of a piece', () => {
  it('64 strings doubled at a quarter inch are 32 ends and about 8 in', () => {
    const piece = lantern({ ends: 32 });
    const plan = warpPlan(piece);
    expect(plan.strings).toBe(64);
    expect(plan.ends).toBe(32);
    expect(plan.width / inch).toBeCloseTo(8, 9);
  });

  it('has half as many loops at the top as strings, when it starts and ends at the bottom', () => {
    const plan = warpPlan(lantern({ ends: 32 }));
    expect(plan.loops).toBe(32);
    expect(plan.knots).toEqual({ start: 'bottom', finish: 'bottom' });
  });

  it('a single warp with odd ends ends at the top, and says so', () => {
    const odd = warpPlan(lantern({ stringsPerEnd: 1, ends: 33 }));
    expect(odd.knots.finish).toBe('top');
    expect(odd.loops).toBe(16);
    expect(odd.parity.remedy).toContain('34');
    expect(warpPlan(lantern({ stringsPerEnd: 2, ends: 33 })).knots.finish).toBe('bottom');
  });

  it('says what was added to reach the length, line by line', () => {
    const plan = warpPlan(lantern());
    const strings = 66;
    expect(plan.length).toBeCloseTo((strings * (400 + 14) + 65 * 6.35 + 300) / 1000, 9);
    expect(plan.arithmetic.lines.map((line) => line.label)).toContain('Knots');
    expect(plan.gramsGuess).toBe(true);
    const weighed = warpPlan({ ...lantern(), warp: { ...lantern().warp, tex: 310 } });
    expect(weighed.grams).toBeCloseTo(weighed.length * 0.31, 9);
    expect(weighed.gramsGuess).toBe(false);
  });

  it('even ends give a blunt two-end point and odd ends a single one', () => {
    expect(pointVerdict(lantern({ ends: 32 }), clothMm(0))).toMatchObject({ verdict: 'blunt-point' });
    expect(pointVerdict(lantern({ ends: 32 }), clothMm(0)).sentence).toContain('ends 16 and 17');
    expect(pointVerdict(lantern({ ends: 33 }), clothMm(0))).toMatchObject({ verdict: 'single-point' });
    expect(pointVerdict(lantern({ ends: 33 }), clothMm(0)).sentence).toContain('end 17');
    expect(pointVerdict(lantern({ ends: 33 }), clothMm(2)).verdict).toBe('uneven-point');
    expect(pointVerdict(lantern({ ends: 33 }), clothMm(6.35 / 2)).verdict).toBe('blunt-point');
  });

  it('finds the ends for a width', () => {
    expect(endsForWidth(mm(210), mm(6.35))).toBe(33);
  });
});

describe('centring', () => {
  it('is exact when ends and notches are both odd or both even, else half a notch off', () => {
    expect(centringVerdict(lantern()).verdict).toBe('centred');
    expect(centringVerdict(lantern({ ends: 32 })).verdict).toBe('half-a-notch-off');
    const off = centringVerdict(lantern({ firstNotch: 3 }));
    expect(off).toMatchObject({ verdict: 'off-centre', remedy: 'Start in notch 10 to centre it.' });
  });

  it('never leaves a piece more than half a notch off when the advice is taken', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 51 }), (ends) => {
        const { loom } = lantern();
        const verdict = centringVerdict(lantern({ ends, firstNotch: centredFirstNotch(loom, ends) }));
        expect(verdict.verdict).not.toBe('off-centre');
      }),
    );
  });
});

describe('fitting the loom', () => {
  it('names the widest that fits', () => {
    const wide = { ...lantern(), warp: { ...lantern().warp, ends: 54, firstNotch: 0 } };
    expect(loomFit(wide).width).toMatchObject({ verdict: 'too-wide', why: 'The widest that fits is 324 mm, 51 ends.' });
    expect(clothWidth(wide.loom, wide.warp)).toBeCloseTo(342.9, 9);
  });

  it('leaves room at the top to open a shed', () => {
    expect(loomFit(lantern()).height.verdict).toBe('fits');
    expect(loomFit(lantern({ height: 290 })).height.verdict).toBe('tight');
    expect(loomFit(lantern({ height: 400 })).height.verdict).toBe('too-tall');
  });
});

describe('the order of warping', () => {
  it('goes up and down, every loop at the top within an end when the warp is doubled', () => {
    const order = wrapOrder(lantern({ ends: 4, firstNotch: 10 }).warp);
    expect(order.map((string) => string.notch)).toEqual([10, 10, 11, 11, 12, 12, 13, 13]);
    expect(order.map((string) => string.direction).join(' ')).toBe('up down up down up down up down');
    for (const string of order) if (string.loop?.bar === 'top') expect(string.loop.toNotch).toBe(string.notch);
  });

  it('makes as many loops as the plan says, and ends where it says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 51 }), fc.constantFrom(1, 2), (ends, stringsPerEnd) => {
        const piece = lantern({ ends, stringsPerEnd });
        const order = wrapOrder(piece.warp);
        const plan = warpPlan(piece);
        expect(order.filter((string) => string.loop?.bar === 'top')).toHaveLength(plan.loops);
        expect(order.at(-1)?.direction).toBe(plan.knots.finish === 'bottom' ? 'down' : 'up');
      }),
    );
  });
});
