import { clothBox } from '../../../core/cartoon/snap.ts';
import { importDrawing } from '../../../core/cartoon/svg/importDrawing.ts';
import { failure, type Outcome, success } from '../../../core/model/outcome.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';

export interface BroughtIn {
  readonly shapes: readonly Shape[];
  /** What was guessed or left out, a sentence each. */
  readonly told: readonly string[];
}

const MOST_BYTES = 8_000_000;

/** Reads a drawing file into shapes that fill the middle of the cloth. Nothing in it is run or fetched. */
export async function bringInDrawing(
  file: File,
  piece: Piece,
  guess: (colour: string, yarn: string) => string,
): Promise<Outcome<BroughtIn>> {
  if (file.size > MOST_BYTES) {
    return failure(
      'drawing-too-large',
      'The drawing is larger than 8 MB.',
      'Save it without pictures inside, or trace it as a picture.',
    );
  }
  const cloth = clothBox(piece);
  const header = piece.cloth.headerPasses * piece.cloth.passHeight;
  const inset = piece.loom.notchPitch;
  const taken = new Set(piece.shapes.map((shape) => shape.id));
  let round = 1;
  while ([...taken].some((id) => id.startsWith(`d${round}-`))) round++;
  const read = importDrawing(await file.text(), {
    box: { left: cloth.left + inset, right: cloth.right - inset, bottom: header + inset, top: cloth.top - inset },
    yarns: piece.yarns,
    idPrefix: `d${round}-`,
    smallest: piece.loom.notchPitch / 2,
  });
  if (!read.ok) return read;
  const nameOf = (id: string) => piece.yarns.find((yarn) => yarn.id === id)?.name ?? id;
  const guesses = read.value.guesses.map((each) => guess(each.colour, nameOf(each.yarn)));
  return success({ shapes: read.value.shapes, told: [...guesses, ...read.value.told] });
}
