import { describe, expect, it } from 'vitest';
import { grams, metres, mm } from '../../src/core/model/units.ts';
import { settOf } from '../../src/core/warp/endWidth.ts';
import { expectedPass, passesPerInch, passHeightFromBeads, passHeightVerdict } from '../../src/core/warp/passHeight.ts';
import { settCheck, yarnOnSett } from '../../src/core/warp/settCheck.ts';
import { strandsThatSuit, suggestedPitch, suggestedWeft } from '../../src/core/warp/settSuggestion.ts';
import { texFromCount, texFromSize } from '../../src/core/yarn/countSystems.ts';
import { ashenhurst, ashenhurstDiameter, packedDiameter } from '../../src/core/yarn/packing.ts';
import { lantern } from './lantern.ts';

const perInch = (ends: number) => 25.4 / ends;
const roomOf = (pitch: number, string: number, weft: number, passHeight = weft / 2) => {
  const piece = lantern({
    ends: 11,
    stringsPerEnd: 1,
    pitch,
    stringDiameter: string,
    passHeight,
    yarn: { diameter: mm(weft) },
  });
  return yarnOnSett(piece, piece.yarns[0]!);
};

describe('the sett against published setts', () => {
  it('weft as thick as the space between warps suits (K. Todd-Hooker, American Tapestry Alliance)', () => {
    expect(roomOf(4, 2, 2).room.verdict).toBe('suits');
  });

  it('worsted-weight weft on 12/6 at 6 to the inch is too loose; 12/15 is better (R. Mezoff, 2018-03-28)', () => {
    const weft = packedDiameter(texFromSize('yards-per-pound', 900), 'wool').diameter;
    const string = (plies: number) =>
      ashenhurstDiameter(texFromCount({ system: 'cotton-ne', size: 12, plies }), ashenhurst.firm);
    expect(roomOf(perInch(6), string(6), weft).room.verdict).toBe('loose');
    expect(roomOf(perInch(6), string(15), weft).room.verdict).not.toBe('loose');
  });

  it('a warp of 8 to the inch takes a weft of 12 wraps to the inch (wetlandwool.com)', () => {
    // The warp itself is taken from the rule that its thickness is half the pitch.
    expect(['close', 'suits']).toContain(roomOf(perInch(8), perInch(8) / 2, perInch(12)).room.verdict);
  });

  it('the weft-faced striped rug covers: 4 ends and 21 passes to the inch, 260 yd/lb weft (rigid-heddle book)', () => {
    const weft = packedDiameter(texFromSize('yards-per-pound', 260), 'wool').diameter;
    expect(weft).toBeCloseTo(1.875, 3);
    const piece = lantern({
      ends: 11,
      stringsPerEnd: 1,
      pitch: perInch(4),
      stringDiameter: 0.706,
      passHeight: perInch(21),
      yarn: { diameter: null, count: { system: 'yards-per-pound', size: 260, plies: 1 } },
    });
    const rug = yarnOnSett(piece, piece.yarns[0]!);
    expect(rug.cover.verdict).toBe('covers');
    expect(rug.room.verdict).toBe('open');
    expect(rug.pass.verdict).toBe('likely');
  });

  it('a rug of 8/5 linen doubled at 3 pairs to the inch is covered at 32 passes (J. Bellairs; hamblecampbell blog, 2008)', () => {
    const piece = lantern({
      ends: 11,
      stringsPerEnd: 2,
      pitch: perInch(3),
      stringDiameter: ashenhurstDiameter(texFromCount({ system: 'linen-lea', size: 8, plies: 5 }), ashenhurst.firm),
      passHeight: perInch(32),
      yarn: { diameter: null, count: { system: 'yards-per-pound', size: 260, plies: 1 } },
    });
    const rug = yarnOnSett(piece, piece.yarns[0]!);
    expect(rug.cover.verdict).toBe('covers');
    expect(rug.room.verdict).not.toBe('crowds');
  });

  it('single medium wool at 8 ends and 24 to 36 passes to the inch covers (common practice, no source)', () => {
    const label = { metres: metres(181), grams: grams(100) };
    for (const passes of [24, 30, 36]) {
      const piece = lantern({
        ends: 11,
        stringsPerEnd: 1,
        pitch: perInch(8),
        stringDiameter: 0.95,
        passHeight: perInch(passes),
        yarn: { diameter: null, label },
      });
      const found = yarnOnSett(piece, piece.yarns[0]!);
      expect(found.cover.verdict).toBe('covers');
      expect(found.pass.verdict).toBe('likely');
    }
  });

  it('Aubusson: 13 portées of 12 ends in 40 cm are 3.9 ends to the centimetre, 16 are 4.8 (craeft.eu)', () => {
    const piece = lantern({ pitch: 400 / (13 * 12), ends: 20, notches: 60 });
    expect(settOf(piece.loom, piece.warp).endsPer10cm).toBeCloseTo(39, 9);
    const finer = lantern({ pitch: 400 / (16 * 12), ends: 20, notches: 60 });
    expect(settOf(finer.loom, finer.warp).endsPer10cm).toBeCloseTo(48, 9);
  });
});

describe('the sett of a piece', () => {
  it('says that the lantern covers and does not crowd', () => {
    const { headline } = settCheck(lantern());
    expect(headline).toMatchObject({ verdict: 'suits', sentence: 'The weft will cover the warp.', remedy: null });
    expect(headline.why).toContain('2.1 mm');
  });

  it('says so when the strings show, the rows crowd or nothing is known, and what to do', () => {
    expect(settCheck(lantern({ passHeight: 2.2 })).headline.sentence).toContain('will show');
    const thick = settCheck(lantern({ yarn: { diameter: mm(5) } }));
    expect(thick.headline).toMatchObject({ verdict: 'mend' });
    expect(thick.yarns[0]?.room.verdict).toBe('crowds');
    expect(thick.headline.remedy).toContain('thick');
    expect(settCheck(lantern({ yarn: { diameter: null } })).headline).toMatchObject({ verdict: 'unknown' });
  });

  it('speaks of strings that fill their notches', () => {
    const piece = lantern({ stringDiameter: 3.2 });
    expect(settCheck(piece).headline.verdict).toBe('mend');
    expect(suggestedWeft(piece)).toBeNull();
  });

  it('reports a doubled warp as ends and as strings (ISO 7211-2, per 10 cm)', () => {
    const { loom, warp } = lantern();
    const sett = settOf(loom, warp);
    expect(sett.endsPerInch).toBeCloseTo(4, 12);
    expect(sett.stringsPer10cm).toBeCloseTo(2 * sett.endsPer10cm, 12);
  });
});

describe('suggestions', () => {
  it('suit when they are taken', () => {
    const piece = lantern({ yarn: { diameter: mm(0.7) } });
    const strands = strandsThatSuit(piece, piece.yarns[0]!);
    expect(strands).toBe(5);
    const wound = lantern({ yarn: { diameter: mm(0.7), strands: strands ?? 1 } });
    expect(yarnOnSett(wound, wound.yarns[0]!).room.verdict).toBe('suits');
    const weft = suggestedWeft(piece);
    for (const diameter of [weft?.thinnest, weft?.thickest]) {
      const thick = lantern({ yarn: { diameter: diameter ?? null } });
      expect(yarnOnSett(thick, thick.yarns[0]!).room.verdict).toBe('suits');
    }
    const pitch = suggestedPitch(lantern(), lantern().yarns[0]!);
    expect(pitch?.closest).toBeCloseTo(5.5, 9);
    expect(pitch?.widest).toBeCloseTo(7.6, 9);
  });
});

describe('pass height', () => {
  it('is half the compressed weft until one is measured, because passes nest', () => {
    const piece = lantern();
    expect(expectedPass(piece, piece.yarns[0]!)).toMatchObject({ passHeight: 1.05, from: 'weft-diameter' });
    const measured = {
      ...piece,
      cloth: { ...piece.cloth, passHeight: mm(1.14), passHeightSource: 'measured' as const },
    };
    expect(expectedPass(measured, piece.yarns[0]!)).toMatchObject({ passHeight: 1.14, from: 'measured' });
  });

  it('says when the planned pass is closer or taller than the yarn is likely to beat', () => {
    const verdict = (passHeight: number) => {
      const piece = lantern({ passHeight });
      return passHeightVerdict(piece, piece.yarns[0]!).verdict;
    };
    expect(verdict(1.06)).toBe('likely');
    expect(verdict(0.4)).toBe('closer-than-likely');
    expect(verdict(2)).toBe('taller-than-likely');
  });

  it('counts twice the beads on a rib: 12 in an inch are 24 passes (R. Mezoff, 2021-05-13)', () => {
    expect(passesPerInch(passHeightFromBeads(12, mm(25.4)))).toBeCloseTo(24, 12);
  });
});
