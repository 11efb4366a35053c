import { createRequire } from 'node:module';
import { PDFArray, PDFDict, PDFDocument, PDFName } from 'pdf-lib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { makeSheet, type SheetName } from '../../src/main/pdf/makeSheet.ts';
import { canDraw, darkRuns, drawPage, type GreyPage } from './pixels.ts';
import { sampleCheck } from './sampleCheck.ts';
import { harbourLantern } from './samplePiece.ts';

const photoOf = async () =>
  new Uint8Array(
    await sharp(createRequire(import.meta.url).resolve('../fixtures/sequence/seq4.jpg'))
      .resize(800)
      .jpeg()
      .toBuffer(),
  );
const make = async (sheet: SheetName, piece: Piece = harbourLantern(), paper: 'a4' | 'letter' = 'a4') => {
  const check = sheet === 'report' ? sampleCheck() : null;
  const made = await makeSheet({
    piece,
    sheet,
    paper,
    language: 'en',
    check,
    photo: check === null ? null : await photoOf(),
  });
  if (!made.ok) throw new Error(made.problem.sentence);
  return made.value;
};
const sheets: readonly SheetName[] = ['warping', 'order', 'cartoon', 'report', 'keys', 'arithmetic', 'finishing'];

/** The 100 mm bar of a cartoon page: the widest run of dark pixels about 13 mm above the page's foot. */
const barLength = (page: GreyPage, perMm: number): number => {
  let longest = 0;
  for (let up = 10; up < 22; up += 0.1) {
    const row = page.height - 1 - Math.round(up * perMm);
    for (const run of darkRuns(page, row)) longest = Math.max(longest, run.length);
  }
  return longest / perMm;
};

describe('sheets', () => {
  it.each(sheets)('%s: the same piece gives the same bytes, at true size, with its typefaces inside', async (sheet) => {
    const [one, again] = [await make(sheet), await make(sheet)];
    expect(Buffer.from(one.bytes).equals(Buffer.from(again.bytes))).toBe(true);
    expect(one.name).toBe(`harbour-lantern-${sheet}.pdf`);
    const document = await PDFDocument.load(one.bytes, { updateMetadata: false });
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None');
    expect(document.getCreationDate()?.toISOString()).toBe('2026-03-08T09:00:00.000Z');
    const fonts = document.context
      .enumerateIndirectObjects()
      .filter(
        ([, object]) => object instanceof PDFDict && object.get(PDFName.of('Type')) === PDFName.of('FontDescriptor'),
      );
    expect(fonts.length).toBeGreaterThanOrEqual(3);
    for (const [, font] of fonts) {
      const inside = (font as PDFDict).get(PDFName.of('FontFile2')) ?? (font as PDFDict).get(PDFName.of('FontFile3'));
      expect(inside).toBeDefined();
    }
    for (const page of document.getPages()) {
      const box = page.node.MediaBox();
      expect(box).toBeInstanceOf(PDFArray);
    }
  });

  it('changes its bytes when the piece changes', async () => {
    const piece = harbourLantern();
    const other = await make('warping', { ...piece, name: 'Another lantern' });
    expect(Buffer.from(other.bytes).equals(Buffer.from((await make('warping')).bytes))).toBe(false);
  });

  it('asks for a check before it makes a report', async () => {
    const made = await makeSheet({
      piece: harbourLantern(),
      sheet: 'report',
      paper: 'a4',
      language: 'en',
      check: null,
      photo: null,
    });
    expect(made.ok ? '' : made.problem.tag).toBe('check-needed');
  });

  it('prints names in any script and every fraction', async () => {
    const piece = { ...harbourLantern(), name: 'Čtvrtá ¼ ⅜ 5⁄16 Ωμέγα Лён 麻', units: 'in' as const };
    for (const sheet of ['warping', 'order', 'report'] as const) {
      expect((await make(sheet, piece)).bytes.length).toBeGreaterThan(5_000);
    }
  });

  it('makes sheets of a large piece', async () => {
    const piece = harbourLantern();
    const wide = {
      ...piece,
      loom: { ...piece.loom, notches: 200, openingWidth: 1300 as never, openingHeight: 1700 as never },
      warp: { ...piece.warp, ends: 150, firstNotch: 10 },
      cloth: { ...piece.cloth, height: 1500 as never },
    };
    const pages = (await PDFDocument.load((await make('cartoon', wide)).bytes)).getPageCount();
    expect(pages).toBeGreaterThan(30);
    expect((await make('order', wide)).bytes.length).toBeGreaterThan(10_000);
  });

  it.skipIf(!canDraw).each(['a4', 'letter'] as const)('draws the check bar 100.0 mm long on %s', async (paper) => {
    const { bytes } = await make('cartoon', harbourLantern(), paper);
    const pages = (await PDFDocument.load(bytes)).getPageCount();
    expect(pages).toBe(3);
    for (let page = 2; page <= pages; page++) {
      expect(Math.abs(barLength(drawPage(bytes, page, 254), 10) - 100)).toBeLessThanOrEqual(0.2);
    }
  });

  it.skipIf(!canDraw)('draws the cloth as wide as its ends', async () => {
    const { bytes } = await make('cartoon');
    const page = drawPage(bytes, 2, 254);
    // The foot of the cloth is a line across all ends: 33 × 6.35 mm, and its own width.
    let longest = 0;
    for (let row = 0; row < page.height; row++) {
      for (const run of darkRuns(page, row)) longest = Math.max(longest, run.length);
    }
    expect(Math.abs(longest / 10 - (33 * 6.35 + 0.5))).toBeLessThanOrEqual(0.3);
  });

  if (!canDraw) it('was not drawn: pdftoppm (poppler-utils) is not on this machine', () => expect(canDraw).toBe(false));
});
