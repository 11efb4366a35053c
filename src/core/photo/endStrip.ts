import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';

/**
 * A straightened ribbon of the picture along one end: `columns` places across, `rows` places up, each a colour of
 * three numbers. Column k lies at `across[k]` mm from the end's own course; row r at cloth height `yStart + r * yStep`.
 */
export interface EndStrip {
  readonly columns: number;
  readonly rows: number;
  readonly across: Float32Array;
  readonly yStart: number;
  readonly yStep: number;
  /** Row-major from the lowest row. */
  readonly colours: Float32Array;
  /** 1 where the row lies in the picture. */
  readonly seen: Uint8Array;
}

/** Heights that every strip of one photograph shares. */
export interface StripHeights {
  readonly yStart: number;
  readonly yStep: number;
  readonly rows: number;
}

export function stripHeights(frame: ClothFrame): StripHeights {
  const yStep = frame.mmPerPx * 0.75;
  const yStart = -Math.max(5, 5 * frame.planPass);
  const yEnd = frame.openingHeight - frame.baseY - 4;
  return { yStart, yStep, rows: Math.max(8, Math.floor((yEnd - yStart) / yStep)) };
}

/** Half the breadth of a strip in pitches: beyond it the neighbours' floats begin. */
export const STRIP_HALF = 0.46;

export function endStrip(
  sampler: LoomSampler,
  frame: ClothFrame,
  heights: StripHeights,
  courseX: (loomY: number) => number,
): EndStrip {
  const half = STRIP_HALF * frame.pitch;
  const side = Math.max(4, Math.round(half / (frame.mmPerPx * 0.75)));
  const columns = 2 * side + 1;
  const across = new Float32Array(columns);
  for (let k = 0; k < columns; k++) across[k] = ((k - side) / side) * half;
  const { rows, yStart, yStep } = heights;
  const colours = new Float32Array(rows * columns * 3);
  const seen = new Uint8Array(rows);
  for (let r = 0; r < rows; r++) {
    const y = frame.baseY + yStart + r * yStep;
    const x = courseX(y);
    let inside = 1;
    const at = r * columns * 3;
    for (let k = 0; k < columns; k++) {
      if (!sampler.read(x + across[k]!, y, colours, at + k * 3)) inside = 0;
    }
    seen[r] = inside;
  }
  return { columns, rows, across, yStart, yStep, colours, seen };
}
