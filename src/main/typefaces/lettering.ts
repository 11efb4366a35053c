import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { PathCommand } from '../../core/model/piece.ts';
import { type Face, type FontFile, fontFiles } from './fontFiles.ts';

export interface Lettering {
  /** Filled nonzero; the first line's baseline begins at (0, 0), mm, y up. */
  readonly commands: readonly PathCommand[];
  /** What was left out, a sentence each. */
  readonly told: readonly string[];
}

/** From one baseline to the next, in heights of a capital. */
const LINE_STEP = 1.6;
const MOST_LETTERS = 200;

/** Height of a capital H in the font's own units: what "letters so many mm tall" means. */
function capitalHeight(file: FontFile): number {
  const points = file.font.layout('H').glyphs.flatMap((glyph) => glyph.path.commands.flatMap(({ args }) => args));
  return Math.max(...points.filter((_, at) => at % 2 === 1));
}

/** A letter's curves as commands; quadratic curves become cubic ones exactly. */
function glyphCommands(
  path: { readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[] },
  scale: number,
  dx: number,
  dy: number,
): PathCommand[] {
  const commands: PathCommand[] = [];
  let x = 0;
  let y = 0;
  for (const { command, args } of path.commands) {
    const at = args.map((value, index) => (index % 2 === 0 ? dx : dy) + value * scale);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = at;
    switch (command) {
      case 'moveTo':
        commands.push({ to: 'move', x: a, y: b });
        break;
      case 'lineTo':
        commands.push({ to: 'line', x: a, y: b });
        break;
      case 'quadraticCurveTo':
        commands.push({
          to: 'cubic',
          x1: x + ((a - x) * 2) / 3,
          y1: y + ((b - y) * 2) / 3,
          x2: c + ((a - c) * 2) / 3,
          y2: d + ((b - d) * 2) / 3,
          x: c,
          y: d,
        });
        break;
      case 'bezierCurveTo':
        commands.push({ to: 'cubic', x1: a, y1: b, x2: c, y2: d, x: e, y: f });
        break;
      default:
        commands.push({ to: 'close' });
    }
    if (at.length >= 2) [x, y] = [at[at.length - 2]!, at[at.length - 1]!];
  }
  return commands;
}

/**
 * Text as the outlines of its letters, to weave.
 * @param text lines are set under one another, from the left.
 * @param face the plain or strong cut of the reading face, or the face of names.
 * @param height of a capital letter, mm.
 */
export function letteringCommands(text: string, face: Face, height: number): Outcome<Lettering, 'lettering-empty'> {
  const files = fontFiles(face);
  const missing = new Set<string>();
  const commands: PathCommand[] = [];
  const letters = [...text.normalize('NFC')];
  const told: string[] = [];
  if (letters.length > MOST_LETTERS) told.push(`Only the first ${MOST_LETTERS} letters were taken.`);
  const lines = letters.slice(0, MOST_LETTERS).join('').split(/\r?\n/);
  for (const [line, words] of lines.entries()) {
    let x = 0;
    let run = '';
    let file = files[0]!;
    const flush = () => {
      if (run === '') return;
      const scale = height / capitalHeight(file);
      const { glyphs, positions } = file.font.layout(run);
      for (const [at, glyph] of glyphs.entries()) {
        const place = positions[at]!;
        const y = place.yOffset * scale - line * LINE_STEP * height;
        commands.push(...glyphCommands(glyph.path, scale, x + place.xOffset * scale, y));
        x += place.xAdvance * scale;
      }
      run = '';
    };
    for (const letter of words) {
      const found = files.find((one) => one.has(letter.codePointAt(0)!));
      if (found === undefined) {
        missing.add(letter);
        continue;
      }
      if (found !== file) flush();
      file = found;
      run += letter;
    }
    flush();
  }
  if (missing.size > 0) told.push(`The typeface has no ${[...missing].slice(0, 12).join(' ')}; left out.`);
  if (commands.length === 0) {
    return failure(
      'lettering-empty',
      'There are no letters to weave in that.',
      'Type a word in Latin, Greek or Cyrillic letters.',
    );
  }
  return success({ commands, told });
}
