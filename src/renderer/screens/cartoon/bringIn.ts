import { clothBox } from '../../../core/cartoon/snap.ts';
import { importDrawing } from '../../../core/cartoon/svg/importDrawing.ts';
import { failure, type Outcome, success } from '../../../core/model/outcome.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { words } from '../../words/useWords.ts';

export interface BroughtIn {
  readonly shapes: readonly Shape[];
  /** Colours of the drawing that no yarn has, each with the id of the yarn nearest to it. */
  readonly guesses: readonly { readonly colour: string; readonly yarn: string }[];
  /** What was left out, a sentence each. */
  readonly told: readonly string[];
}

const MOST_BYTES = 8_000_000;

/** Reads a drawing file into shapes that fill the middle of the cloth. Nothing in it is run or fetched. */
export async function bringInDrawing(file: File, piece: Piece): Promise<Outcome<BroughtIn>> {
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
    areaName: words().cartoon.names.area,
    smallest: piece.loom.notchPitch / 2,
  });
  if (!read.ok) return read;
  const colourOf = (id: string) => piece.yarns.find((yarn) => yarn.id === id)?.colour;
  const guesses = read.value.guesses.filter(({ colour, yarn }) => colour !== colourOf(yarn));
  return success({ shapes: read.value.shapes, guesses, told: read.value.told });
}
