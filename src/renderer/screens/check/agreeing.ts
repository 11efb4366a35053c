import type { Comparison } from '../../../core/compare/compareReading.ts';
import { fellLean } from '../../../core/compare/fellFlags.ts';
import type { Flag, LoomReading } from '../../../core/model/check.ts';
import { measurement } from '../../../core/model/measurement.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Words } from '../../words/en.ts';
import { passFigure, rowFigure, sizeFigure } from '../../words/figures.ts';

import { edgeAtFell } from './edgeRows.ts';

export type Standing = 'agrees' | 'close' | 'off' | 'told';

const standing = (value: number, sigma: number, allowance: number): Standing =>
  Math.abs(value) <= allowance ? 'agrees' : Math.abs(value) <= 2 * sigma ? 'close' : 'off';

export interface AgreeingRow {
  readonly name: string;
  readonly figure: string;
  /** `close`: larger than the allowance, yet not by twice its give or take. `off`: by more, though nothing was flagged. `told`: not judged. */
  readonly stands: Standing;
}

/** What was measured and raises no flag, each with its figure. */
export function agreeingRows(
  reading: LoomReading,
  comparison: Comparison,
  piece: Piece,
  words: Words['check'],
): readonly AgreeingRow[] {
  const { units } = piece;
  const { allowance } = piece.making;
  const pitch = piece.loom.notchPitch;
  const planPass = piece.cloth.passHeight;
  const flagged = (test: (flag: Flag) => boolean) => reading.flags.some(test);
  const rows: AgreeingRow[] = [];
  for (const side of ['left', 'right'] as const) {
    const course = comparison.edges.find((each) => each.side === side);
    const edge = course === undefined ? null : edgeAtFell(course);
    const spoken = flagged((flag) => flag.side === side && (flag.kind === 'draw-in' || flag.kind === 'spreading'));
    if (edge === null || spoken) continue;
    rows.push({
      name: words.edges[side],
      figure: rowFigure(edge, 'across', units),
      stands: standing(edge.value, edge.sigma, allowance),
    });
  }
  const lean = fellLean(reading.ends, pitch, reading.pass?.value ?? planPass);
  if (lean !== null && !flagged((flag) => flag.kind === 'tilt')) {
    const level = Math.abs(lean.riseMm) <= Math.max(lean.sigmaMm, 0.5);
    const name = level ? words.fellLevel : lean.riseMm > 0 ? words.fellRightHigher : words.fellLeftHigher;
    const figure = sizeFigure(measurement(lean.riseMm, lean.sigmaMm, 1, 'fell'), units);
    rows.push({ name, figure, stands: standing(lean.riseMm, lean.sigmaMm, allowance) });
  }
  // Unequal halves are normal while one side is ahead: the difference is shown, and not judged.
  const { mean } = comparison.mirrored;
  if (mean !== null && mean.turns !== 0 && !flagged((flag) => flag.kind === 'uneven')) {
    const figure = sizeFigure(measurement(mean.differenceMm, mean.sigmaMm, 1, 'fell'), units);
    const ahead = mean.differenceMm > 0 ? words.leftAhead : words.rightAhead;
    rows.push({ name: ahead(Math.abs(mean.turns)), figure, stands: 'told' });
  }
  if (reading.pass !== null && !flagged((flag) => flag.kind === 'beat')) {
    rows.push({ name: words.passHeight, figure: passFigure(reading.pass, units), stands: 'agrees' });
  }
  return rows;
}
