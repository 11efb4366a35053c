import fontkit from '@pdf-lib/fontkit';
import type { PDFDocument, PDFFont } from 'pdf-lib';
import { type Face, fontFiles } from '../typefaces/fontFiles.ts';

/** One cut of a face covers some characters only; runs of text change from one to the next as they need. */
interface Cut {
  readonly font: PDFFont;
  readonly has: (codePoint: number) => boolean;
}
export type Typefaces = Readonly<Record<Face, readonly Cut[]>>;

/**
 * Embeds the faces a document needs. Cuts beyond plain Latin are embedded only when some text needs them, so most
 * sheets stay small.
 * @param texts every text that comes from the weaver.
 */
export async function embedTypefaces(document: PDFDocument, texts: readonly string[]): Promise<Typefaces> {
  document.registerFontkit(fontkit);
  const beyond = new Set([...texts.join('')].map((letter) => letter.codePointAt(0)!).filter((code) => code > 0x7e));
  const embedded = new Map<string, Cut>();
  const face = async (name: Face): Promise<readonly Cut[]> => {
    const cuts: Cut[] = [];
    for (const [at, { name: customName, bytes, has }] of fontFiles(name).entries()) {
      if (at > 0 && ![...beyond].some(has)) continue;
      // A name of our own, since the library would otherwise make one up by chance.
      const cut = embedded.get(customName) ?? {
        font: await document.embedFont(bytes, { subset: true, customName }),
        has,
      };
      embedded.set(customName, cut);
      cuts.push(cut);
    }
    return cuts;
  };
  return { plain: await face('plain'), strong: await face('strong'), heading: await face('heading') };
}

const drawnFractions: Readonly<Record<string, string>> = { '⅛': '1⁄8', '⅜': '3⁄8', '⅝': '5⁄8', '⅞': '7⁄8' };

export interface TextRun {
  readonly text: string;
  readonly font: PDFFont;
  /** Share of the type size: the parts of a fraction are small. */
  readonly scale: number;
  /** How far the run stands above the baseline, as a share of the type size. */
  readonly rise: number;
}

/** Above, at, and below the stroke of a fraction. */
const fractionParts = [
  { scale: 0.66, rise: 0.26 },
  { scale: 0.9, rise: 0 },
  { scale: 0.66, rise: 0 },
] as const;
const whole = { scale: 1, rise: 0 };

/** Text cut into runs of one font and size each. A character no cut has is printed as a question mark. */
export function runsOf(faces: Typefaces, face: Face, text: string): TextRun[] {
  const cuts = faces[face];
  const runs: { text: string; font: PDFFont; scale: number; rise: number }[] = [];
  const add = (part: string, { scale, rise }: { readonly scale: number; readonly rise: number }) => {
    for (const letter of part) {
      const cut = cuts.find((one) => one.has(letter.codePointAt(0)!));
      const font = (cut ?? cuts[0]!).font;
      const printed = cut === undefined ? '?' : letter;
      const last = runs.at(-1);
      if (last !== undefined && last.font === font && last.scale === scale && last.rise === rise) last.text += printed;
      else runs.push({ text: printed, font, scale, rise });
    }
  };
  const spelled = text.replaceAll(/[⅛⅜⅝⅞]/g, (fraction) => drawnFractions[fraction]!).replaceAll(/\s/g, ' ');
  for (const piece of spelled.split(/(\d+⁄\d+)/)) {
    const fraction = /^(\d+)(⁄)(\d+)$/.exec(piece);
    if (fraction === null) add(piece, whole);
    else for (const [at, part] of fraction.slice(1).entries()) add(part, fractionParts[at]!);
  }
  return runs;
}
