import { describe, expect, it } from 'vitest';
import { everyFlag } from '../support/everyFlag.ts';
import { fullPiece } from './fullPiece.ts';
import { sampleCheck } from './sampleCheck.ts';
import { harbourLantern } from './samplePiece.ts';
import { sheets, written } from './written.ts';

const millimetres = /\b[cm]m\b|(milli|centi)met|\d ?m\b|g\/km/i;
const inches = { en: /[\d¼½¾⅛⅜⅝⅞] in\b|\binch/, de: /\bZoll\b|\binch/ } as const;
/** A spread in inches is a part of one, never a decimal. */
const decimalSpread = /(give or take|auf|±) ?0?[.,]\d(?!\d\d)/;

describe('every figure is in the unit the weaver reads', () => {
  it('in what flags of every kind say', () => {
    const flags = everyFlag(sampleCheck().reading, harbourLantern());
    expect(new Set(flags.map(({ kind }) => kind)).size).toBe(8);
    for (const { message, advice } of flags) {
      expect(message.in).not.toMatch(millimetres);
      expect(message.in).not.toMatch(/give or take [\d.]*\.\d/);
      expect(message.mm).not.toMatch(inches.en);
      expect(message.mm).not.toMatch(/[⁄¼½¾⅛⅜⅝⅞]/);
      expect(advice).not.toMatch(/\b(mm|inch)\b/);
    }
  });

  it.each(sheets)('on the printed sheet: %s', async (sheet) => {
    const piece = fullPiece();
    for (const language of ['en', 'de'] as const) {
      const inInches = await written(sheet, { ...piece, units: 'in' }, language);
      expect(inInches.filter((line) => millimetres.test(line) || decimalSpread.test(line))).toEqual([]);
      const inMillimetres = await written(sheet, { ...piece, units: 'mm' }, language);
      expect(inMillimetres.filter((line) => inches[language].test(line))).toEqual([]);
    }
  });
});
