import { PDFDocument, PrintScaling } from 'pdf-lib';
import type { Piece } from '../../core/model/piece.ts';
import { Pen, POINTS_PER_MM } from './pen.ts';
import { embedTypefaces, type Typefaces } from './typefaces.ts';

/** A document under way. */
export interface Sheet {
  readonly document: PDFDocument;
  readonly faces: Typefaces;
  readonly addPage: (width: number, height: number) => Pen;
  readonly bytes: () => Promise<Uint8Array>;
}

/**
 * A new document that prints at true size. Its dates are the piece's own, so the same piece gives the same bytes.
 * @param title shown in the viewer's bar.
 * @param texts every text from outside, so the typefaces it needs are embedded.
 */
export async function newSheet(piece: Piece, title: string, texts: readonly string[]): Promise<Sheet> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const when = new Date(piece.changed);
  const date = Number.isNaN(when.getTime()) ? new Date(0) : when;
  document.setTitle(title, { showInWindowTitleBar: true });
  document.setLanguage('en');
  document.setCreator('Plumbweft');
  document.setProducer('Plumbweft');
  document.setCreationDate(date);
  document.setModificationDate(date);
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const faces = await embedTypefaces(document, [JSON.stringify(piece), title, ...texts]);
  return {
    document,
    faces,
    addPage: (width, height) => new Pen(document.addPage([width * POINTS_PER_MM, height * POINTS_PER_MM]), faces),
    bytes: () => document.save(),
  };
}
