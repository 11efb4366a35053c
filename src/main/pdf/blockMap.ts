import type { Piece } from '../../core/model/piece.ts';
import { MM_PER_INCH } from '../../core/model/units.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import { areaLabels } from '../../core/report/areaLabels.ts';
import { blockOfCells } from '../../core/report/blockOfCells.ts';
import { chartOutlines } from '../../core/report/chartOutlines.ts';
import { chartPatches } from '../../core/report/chartPatches.ts';
import { ink, palette } from './palette.ts';
import type { Pen } from './pen.ts';

/**
 * The cloth with its blocks numbered in weaving order, as large as fits under (left, top) in the given size.
 * @returns where the drawing ends below.
 */
export function drawBlockMap(
  pen: Pen,
  piece: Piece,
  plan: Plan,
  left: number,
  top: number,
  width: number,
  height: number,
): number {
  const { chart } = plan;
  const margin = { left: 12, bottom: 8 };
  const clothHeight = chart.passes * chart.passHeight;
  const clothWidth = chart.ends * chart.pitch;
  const scale = Math.min((width - margin.left) / clothWidth, (height - margin.bottom - 4) / clothHeight);
  const foot = top - 4 - clothHeight * scale;
  const x = (end: number) => left + margin.left + end * chart.pitch * scale;
  const y = (pass: number) => foot + pass * chart.passHeight * scale;

  for (const patch of chartPatches(chart, (cell) => chart.cells[cell]!)) {
    const colour = ink(piece.yarns[patch.value]?.colour ?? '#ffffff');
    pen.page.drawRectangle({
      x: x(patch.fromEnd) * (72 / 25.4),
      y: y(patch.fromPass) * (72 / 25.4),
      width: (x(patch.toEnd) - x(patch.fromEnd)) * (72 / 25.4),
      height: (y(patch.toPass) - y(patch.fromPass)) * (72 / 25.4),
      color: colour,
      opacity: 0.45,
      borderWidth: 0,
    });
  }
  const owners = blockOfCells(chart, plan.blocks);
  for (const edge of chartOutlines(chart, (cell) => owners[cell]!)) {
    pen.line(x(edge.fromEnd), y(edge.fromPass), x(edge.toEnd), y(edge.toPass), { width: 0.35 });
  }
  pen.box(x(0), y(0), clothWidth * scale, clothHeight * scale, null, { width: 0.5 });

  for (let end = 0; end < chart.ends; end += 1) {
    if (end !== 0 && end !== chart.ends - 1 && (end + 1) % 5 !== 0) continue;
    if (chart.ends - 1 - end < 2 && end !== chart.ends - 1) continue;
    pen.text(String(end + 1), (x(end) + x(end + 1)) / 2, foot - 4, {
      size: 7,
      align: 'middle',
      colour: palette.second,
    });
  }
  const inches = piece.units === 'in';
  const unit = inches ? MM_PER_INCH : 1;
  const tick = (inches ? 2 : 50) * (clothHeight > 400 ? 2 : 1);
  for (let height = 0; height * unit <= clothHeight; height += tick) {
    const at = foot + height * unit * scale;
    pen.line(x(0) - 1.6, at, x(0), at, { colour: palette.edge, width: 0.25 });
    pen.text(String(height), x(0) - 2.4, at - 0.9, { size: 7, align: 'right', colour: palette.second });
  }
  pen.text(inches ? 'inches' : 'mm', x(0) - 2.4, y(chart.passes) + 1.4, {
    size: 7,
    align: 'right',
    colour: palette.second,
  });
  pen.text('end', x(0) - 2.4, foot - 4, { size: 7, align: 'right', colour: palette.second });

  for (const label of areaLabels(chart, (cell) => owners[cell]!)) {
    if (label.value < 0) continue;
    if (label.room * scale < 1.4) {
      // Too thin to write in: its number stands beside it.
      const at = y(label.pass + 0.5);
      pen.line(x(label.end + 0.5), at, x(chart.ends) + 2, at, { colour: palette.edge, width: 0.2 });
      pen.text(String(label.value + 1), x(chart.ends) + 2.8, at - 1, { face: 'strong', size: 8 });
      continue;
    }
    const size = Math.min(12, Math.max(7, label.room * scale * 3));
    const words = String(label.value + 1);
    const [cx, cy] = [x(label.end + 0.5), y(label.pass + 0.5)];
    const reach = pen.widthOf(words, { face: 'strong', size }) / 2 + 1;
    pen.box(cx - reach, cy - size * 0.2, 2 * reach, size * 0.4, palette.white);
    pen.text(words, cx, cy - size * 0.125, { face: 'strong', size, align: 'middle' });
  }
  return foot - margin.bottom;
}
