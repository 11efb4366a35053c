import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fontkit from '@pdf-lib/fontkit';
import type { PDFDocument, PDFFont } from 'pdf-lib';

/** Text read at the loom, its strong cut, and the face of names and sentences. */
export type Face = 'plain' | 'strong' | 'heading';

/** One cut of a face covers some characters only; runs of text change from one to the next as they need. */
interface Cut {
  readonly font: PDFFont;
  readonly has: (codePoint: number) => boolean;
}
export type Typefaces = Readonly<Record<Face, readonly Cut[]>>;

const files: Record<Face, readonly string[]> = {
  plain: ['atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-*-400-normal.woff'],
  strong: ['atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-*-700-normal.woff'],
  heading: ['brygada-1918/files/brygada-1918-*-600-normal.woff'],
};
/** Greek, Cyrillic and Vietnamese exist in Brygada only; the other faces borrow them from it. */
const borrowed = 'brygada-1918/files/brygada-1918-*-400-normal.woff';
const subsets = ['latin', 'latin-ext'];
const borrowedSubsets = ['greek', 'cyrillic', 'cyrillic-ext', 'vietnamese'];

const find = createRequire(import.meta.url);

/** A font file as fontkit reads it; only what is used here. */
interface ReadFont {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

interface FontFile {
  readonly bytes: Uint8Array;
  readonly has: (codePoint: number) => boolean;
}
/** Font files never change while the program runs, and unpacking one takes a while. */
const read = new Map<string, FontFile>();

function fontFile(pattern: string, subset: string): FontFile {
  const path = find.resolve(`@fontsource/${pattern.replace('*', subset)}`);
  const known = read.get(path);
  if (known !== undefined) return known;
  const bytes = readFileSync(path);
  const font = fontkit.create(bytes) as unknown as ReadFont;
  const file = { bytes, has: (codePoint: number) => font.hasGlyphForCodePoint(codePoint) };
  read.set(path, file);
  return file;
}

/**
 * Embeds the faces a document needs. Cuts beyond plain Latin are embedded only when some text needs them, so most
 * sheets stay small.
 * @param texts every text that comes from the weaver.
 */
export async function embedTypefaces(document: PDFDocument, texts: readonly string[]): Promise<Typefaces> {
  document.registerFontkit(fontkit);
  const beyond = new Set([...texts.join('')].map((letter) => letter.codePointAt(0)!).filter((code) => code > 0x7e));
  const embed = async (pattern: string, wanted: readonly string[], always: readonly string[]): Promise<Cut[]> => {
    const cuts: Cut[] = [];
    for (const subset of wanted) {
      const { bytes, has } = fontFile(pattern, subset);
      if (!always.includes(subset) && ![...beyond].some(has)) continue;
      // A name of our own, since the library would otherwise make one up by chance.
      const customName = `${pattern.split('/').at(-1)!.replace('-normal.woff', '').replace('*', subset)}`;
      cuts.push({ font: await document.embedFont(bytes, { subset: true, customName }), has });
    }
    return cuts;
  };
  const borrow = await embed(borrowed, borrowedSubsets, []);
  const face = async (name: Face) => [...(await embed(files[name][0]!, subsets, ['latin'])), ...borrow];
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
