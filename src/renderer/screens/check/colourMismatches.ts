import { covers, type Outline, outlinesOf } from '../../../core/cartoon/outline.ts';
import type { LoomReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Project } from './overlayPaths.ts';

/**
 * Woven cells whose colour is not the planned yarn's, as one path of cell outlines. A cell's plan is the first shape
 * that contains its middle, else the ground; header rows are the header's yarn.
 */
export function colourMismatches(piece: Piece, reading: LoomReading, project: Project): string {
  if (reading.colours === null) return '';
  const { ends } = piece.warp;
  const pitch = piece.loom.notchPitch;
  const pass = reading.pass?.value ?? piece.cloth.passHeight;
  const half = (ends * pitch) / 2;
  const box = { left: -half, right: half, bottom: 0, top: piece.cloth.height };
  const yarnAt = (id: string) => piece.yarns.findIndex((yarn) => yarn.id === id);
  const shapes: readonly { readonly yarn: number; readonly outlines: readonly Outline[] }[] = piece.shapes
    .filter((shape) => !shape.hidden)
    .map((shape) => ({ yarn: yarnAt(shape.yarn), outlines: outlinesOf(shape, box) }));
  const ground = yarnAt(piece.cloth.ground);
  const header = yarnAt(piece.cloth.headerYarn);
  let path = '';
  reading.colours.rows.forEach((row, index) => {
    const y = (index + 0.5) * pass;
    row.forEach((seen, end) => {
      if (seen < 0) return;
      const x = (end - (ends - 1) / 2) * pitch;
      const shape = shapes.find((each) => each.outlines.some((outline) => covers(outline, x, y)));
      const planned = index < piece.cloth.headerPasses ? header : (shape?.yarn ?? ground);
      if (seen === planned) return;
      const corners = [
        project(x - pitch / 2, y - pass / 2),
        project(x + pitch / 2, y - pass / 2),
        project(x + pitch / 2, y + pass / 2),
        project(x - pitch / 2, y + pass / 2),
      ];
      path += `M${corners.map((corner) => `${corner.x.toFixed(1)} ${corner.y.toFixed(1)}`).join('L')}Z`;
    });
  });
  return path;
}
