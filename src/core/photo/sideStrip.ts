import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';

/**
 * The picture along one side of the cloth, straightened: column k lies `reach * …` outward of the guide line, so
 * columns run from well inside the cloth (0) to well outside it whichever side it is.
 */
export interface SideStrip {
  readonly side: 'left' | 'right';
  readonly columns: number;
  readonly rows: number;
  /** Outward distance of each column from the guide, mm; negative lies inside the cloth. */
  readonly outward: Float32Array;
  /** Cloth height of row 0 and between rows, mm. */
  readonly yStart: number;
  readonly yStep: number;
  /** Guide line per row, cloth x. */
  readonly guide: Float32Array;
  /** Row-major colours, three numbers a place. */
  readonly colours: Float32Array;
  readonly seen: Uint8Array;
}

/** @param guideX cloth x of the outer end at a height, roughly. */
export function sideStrip(
  sampler: LoomSampler,
  frame: ClothFrame,
  side: 'left' | 'right',
  guideX: (y: number) => number,
  yTop: number,
): SideStrip {
  const step = frame.mmPerPx * 0.75;
  const inside = Math.max(10, 3.2 * frame.pitch);
  const outside = Math.max(12, 0.7 * frame.pitch + 10);
  const columns = Math.round((inside + outside) / step);
  const outward = new Float32Array(columns);
  for (let k = 0; k < columns; k++) outward[k] = -inside + k * step;
  const yStart = 0.3;
  const rows = Math.max(0, Math.floor((yTop - yStart) / step));
  const guide = new Float32Array(rows);
  const colours = new Float32Array(rows * columns * 3);
  const seen = new Uint8Array(rows * columns);
  const sign = side === 'left' ? -1 : 1;
  for (let r = 0; r < rows; r++) {
    const y = yStart + r * step;
    guide[r] = guideX(y);
    for (let k = 0; k < columns; k++) {
      const at = r * columns + k;
      const x = frame.centreX + guide[r]! + sign * outward[k]!;
      const inPicture = sampler.read(x, frame.baseY + y, colours, at * 3);
      // The loom's own side is no surroundings of the cloth.
      seen[at] = inPicture && Math.abs(x) < frame.openingWidth / 2 - 1 ? 1 : 0;
    }
  }
  return { side, columns, rows, outward, yStart, yStep: step, guide, colours, seen };
}
