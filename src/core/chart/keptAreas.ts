import type { Piece } from '../model/piece.ts';
import type { ShapeArea } from '../model/plan.ts';
import type { SteppedChart } from './makeChart.ts';
import { boundaryRows, cellsOf } from './shownAreas.ts';

/** The area each shape shows in the drawing against the area woven. @param passHeight mm. */
export function keptAreas(
  piece: Piece,
  { chart, drawnAreas, shown }: Pick<SteppedChart, 'chart' | 'drawnAreas' | 'shown'>,
  passHeight: number,
): readonly ShapeArea[] {
  const count = piece.shapes.length + 1;
  const cellMm2 = chart.pitch * passHeight;
  const woven = cellsOf(chart.areas, count);
  const middles = cellsOf(drawnAreas, count);
  const rows = boundaryRows(shown, chart.areas, chart.ends);
  return piece.shapes.map((shape, index) => ({
    shape: shape.id,
    drawnMm2: shown.cells[index + 1]! * cellMm2,
    wovenMm2: woven[index + 1]! * cellMm2,
    middlesMm2: middles[index + 1]! * cellMm2,
    boundaryRows: rows[index + 1]!,
  }));
}
