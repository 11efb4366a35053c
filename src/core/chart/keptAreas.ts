import type { Piece } from '../model/piece.ts';
import { type Chart, HEADER_AREA, type ShapeArea } from '../model/plan.ts';
import type { DrawnShapes, VisibleSpan } from './visibleSpans.ts';

/**
 * The area each shape shows in the drawing against the area woven.
 * @param spans what shows on every pass; none on those of header and footer.
 * @param passHeight mm.
 */
export function keptAreas(
  piece: Piece,
  chart: Chart,
  drawn: DrawnShapes,
  spans: readonly (readonly VisibleSpan[])[],
  passHeight: number,
): readonly ShapeArea[] {
  const count = piece.shapes.length + 1;
  const drawnMm2 = new Float64Array(count);
  const wovenMm2 = new Float64Array(count);
  const boundaryRows = new Uint32Array(count);
  spans.forEach((row, pass) => {
    if (row.length === 0) return;
    // Runs of each area that end inside the cloth.
    const drawnRuns = new Uint32Array(count);
    const wovenRuns = new Uint32Array(count);
    for (const { area, from, to } of row) {
      drawnMm2[area]! += (to - from) * passHeight;
      if (from > drawn.left || to < drawn.right) drawnRuns[area]!++;
    }
    const base = pass * chart.ends;
    for (let start = 0; start < chart.ends; ) {
      const area = chart.areas[base + start]!;
      let stop = start + 1;
      while (stop < chart.ends && chart.areas[base + stop] === area) stop++;
      if (area !== HEADER_AREA) {
        wovenMm2[area]! += (stop - start) * chart.pitch * passHeight;
        if (start > 0 || stop < chart.ends) wovenRuns[area]!++;
      }
      start = stop;
    }
    for (let area = 0; area < count; area++) boundaryRows[area]! += Math.max(drawnRuns[area]!, wovenRuns[area]!);
  });
  return piece.shapes.map((shape, index) => ({
    shape: shape.id,
    drawnMm2: drawnMm2[index + 1]!,
    wovenMm2: wovenMm2[index + 1]!,
    boundaryRows: boundaryRows[index + 1]!,
  }));
}
