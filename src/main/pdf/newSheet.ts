import { PDFDocument, PrintScaling } from 'pdf-lib';
import type { Piece } from '../../core/model/piece.ts';
import { blockNameIn, type LanguageName, tellIn } from '../../core/words/telling.ts';
import { Pen, POINTS_PER_MM } from './pen.ts';
import { embedTypefaces, type Typefaces } from './typefaces.ts';

/** A document under way. */
export interface Sheet {
  readonly document: PDFDocument;
  readonly faces: Typefaces;
  readonly addPage: (width: number, height: number) => Pen;
  readonly bytes: () => Promise<Uint8Array>;
}

/** Says words in one language; a sheet says the same few hundred times over. */
function teller(language: LanguageName): (words: string) => string {
  const said = new Map<string, string>();
  return (words) => {
    const told = said.get(words) ?? tellIn(language, words);
    said.set(words, told);
    return told;
  };
}

/**
 * A new document that prints at true size. Its dates are the piece's own, so the same piece gives the same bytes.
 * @param title what the sheet is; shown with the piece's name in the viewer's bar.
 * @param texts every text from outside, so the typefaces it needs are embedded.
 */
export async function newSheet(
  piece: Piece,
  sheetTitle: string,
  texts: readonly string[],
  language: LanguageName,
): Promise<Sheet> {
  const tell = teller(language);
  const speech = { tell, blockName: (name: string) => blockNameIn(language, name) };
  const title = `${piece.name}, ${tell(sheetTitle)}`;
  const document = await PDFDocument.create({ updateMetadata: false });
  const when = new Date(piece.changed);
  const date = Number.isNaN(when.getTime()) ? new Date(0) : when;
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setLanguage(language);
  document.setCreator('Plumbweft');
  document.setProducer('Plumbweft');
  document.setCreationDate(date);
  document.setModificationDate(date);
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const faces = await embedTypefaces(document, [JSON.stringify(piece), title, ...texts.map(tell)]);
  return {
    document,
    faces,
    addPage: (width, height) =>
      new Pen(document.addPage([width * POINTS_PER_MM, height * POINTS_PER_MM]), faces, speech),
    bytes: () => document.save(),
  };
}
