import { outlinesOf } from '../cartoon/outline.ts';
import type { Piece } from '../model/piece.ts';
import { HEADER_AREA, type StringMarks } from '../model/plan.ts';
import { clothGridOf, endX, heightOfPasses, type MeasuredCloth, passY } from './clothGrid.ts';
import { clothBox } from './sampleAreas.ts';

/**
 * Heights to mark on each string: where the lines of the cartoon that show cross its end, mm above the base of the
 * cloth, rising. The drawing as sampled says between which two passes a line crosses; the outline itself says where.
 */
export function stringMarks(
  piece: Piece,
  drawnAreas: Uint16Array,
  measured: MeasuredCloth | null = null,
): readonly StringMarks[] {
  const grid = clothGridOf(piece, measured);
  const box = clothBox(grid);
  const outlines = piece.shapes.map((shape) => (shape.hidden ? [] : outlinesOf(shape, box)));
  const crossings = (area: number, x: number): number[] => {
    const heights: number[] = [];
    for (const outline of area > 0 && area !== HEADER_AREA ? outlines[area - 1]! : []) {
      for (const ring of outline.rings) {
        for (let at = 0; at < ring.length; at += 2) {
          const before = at === 0 ? ring.length - 2 : at - 2;
          const fromX = ring[before]!;
          const toX = ring[at]!;
          if (fromX <= x === toX <= x) continue;
          heights.push(ring[before + 1]! + ((x - fromX) * (ring[at + 1]! - ring[before + 1]!)) / (toX - fromX));
        }
      }
    }
    return heights;
  };
  const marks: StringMarks[] = [];
  for (let end = 0; end < grid.ends; end++) {
    const x = endX(grid, end);
    const known = new Map<number, number[]>();
    const heights: number[] = [];
    for (let pass = grid.header + 1; pass < grid.passes - grid.footer; pass++) {
      const here = drawnAreas[pass * grid.ends + end]!;
      const below = drawnAreas[(pass - 1) * grid.ends + end]!;
      if (here === below) continue;
      const line = heightOfPasses(grid, pass);
      let mark = line;
      let nearest = grid.passHeight;
      for (const area of [here, below]) {
        const at = known.get(area) ?? crossings(area, x);
        known.set(area, at);
        for (const height of at) {
          if (height < passY(grid, pass - 1) - 1e-6 || height > passY(grid, pass) + 1e-6) continue;
          if (Math.abs(height - line) < nearest) {
            nearest = Math.abs(height - line);
            mark = height;
          }
        }
      }
      heights.push(mark);
    }
    marks.push({ end, heightsMm: heights });
  }
  return marks;
}
