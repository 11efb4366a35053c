import type { ClothFrame } from './clothFrame.ts';
import type { RibCourse } from './ribCourse.ts';
import type { LoomSampler } from './sampleLoom.ts';

/** The colour up the middle of one end's rib, from the base to its fell. */
export interface WeaveLine {
  readonly end: number;
  readonly rows: number;
  readonly yStep: number;
  /** Three numbers a row, row 0 at the base. */
  readonly colours: Float32Array;
}

/** Share of the pitch either side of a rib's middle that is averaged. */
const BREADTH = 0.2;

export function weaveLines(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: RibCourse,
  tops: readonly { readonly end: number; readonly y: number }[],
): WeaveLine[] {
  const yStep = frame.mmPerPx * 0.75;
  const side = Math.max(1, Math.round((BREADTH * frame.pitch) / frame.mmPerPx / 1.2));
  const place = new Float32Array(3);
  return tops.map(({ end, y: top }) => {
    const rows = Math.max(0, Math.floor(top / yStep));
    const colours = new Float32Array(rows * 3);
    for (let r = 0; r < rows; r++) {
      const y = r * yStep;
      const x = course(end, y) + frame.centreX;
      for (let k = -side; k <= side; k++) {
        sampler.read(x + (k / side) * BREADTH * frame.pitch, y + frame.baseY, place, 0);
        for (let c = 0; c < 3; c++) colours[r * 3 + c]! += place[c]! / (2 * side + 1);
      }
    }
    return { end, rows, yStep, colours };
  });
}

/** The same line, ended at a height, mm up from the base. */
export function lineUpTo(line: WeaveLine, y: number): WeaveLine {
  const rows = Math.max(0, Math.min(line.rows, Math.floor(y / line.yStep)));
  return { ...line, rows, colours: line.colours.subarray(0, rows * 3) };
}
