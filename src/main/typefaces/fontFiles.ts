import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fontkit from '@pdf-lib/fontkit';

/** Text read at the loom, its strong cut, and the face of names and sentences. All OFL-1.1. */
export type Face = 'plain' | 'strong' | 'heading';

/** Curves of a letter in the font's own units, y up. */
interface ReadPath {
  readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[];
}
/** A font as fontkit reads it; only what is used here. */
export interface ReadFont {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(text: string): {
    readonly glyphs: readonly { readonly path: ReadPath }[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  };
}

/** One file holds some characters only; text changes from one to the next as it needs. */
export interface FontFile {
  /** A name for it, of our own. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly font: ReadFont;
  readonly has: (codePoint: number) => boolean;
}

const patterns: Record<Face, string> = {
  plain: 'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-*-400-normal.woff',
  strong: 'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-*-700-normal.woff',
  heading: 'brygada-1918/files/brygada-1918-*-600-normal.woff',
};
/** Greek, Cyrillic and Vietnamese exist in Brygada only; the other faces borrow them from it. */
const borrowed = 'brygada-1918/files/brygada-1918-*-400-normal.woff';

const find = createRequire(import.meta.url);
/** Font files never change while the program runs, and unpacking one takes a while. */
const read = new Map<string, FontFile>();

function fontFile(pattern: string, subset: string): FontFile {
  const path = find.resolve(`@fontsource/${pattern.replace('*', subset)}`);
  const known = read.get(path);
  if (known !== undefined) return known;
  const bytes = readFileSync(path);
  const font = fontkit.create(bytes) as unknown as ReadFont;
  const name = pattern.split('/').at(-1)!.replace('-normal.woff', '').replace('*', subset);
  const file = { name, bytes, font, has: (codePoint: number) => font.hasGlyphForCodePoint(codePoint) };
  read.set(path, file);
  return file;
}

/** The files of a face, in the order a character is looked for. */
export const fontFiles = (face: Face): readonly FontFile[] => [
  ...['latin', 'latin-ext'].map((subset) => fontFile(patterns[face], subset)),
  ...['greek', 'cyrillic', 'cyrillic-ext', 'vietnamese'].map((subset) => fontFile(borrowed, subset)),
];
