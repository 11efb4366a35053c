import type { Mm } from './units.ts';

/** No yarn: a cell that stays bare. */
export const BARE = 255;

/**
 * The cloth as a grid of (end × pass) cells. `cells[pass * ends + end]` is an index into the piece's yarns, pass 0
 * lowest, end 0 leftmost; `areas` holds, in the same order, 0 for the ground, 1 + shape index for a shape and
 * `HEADER_AREA` for header and footer.
 */
export interface Chart {
  readonly ends: number;
  readonly passes: number;
  readonly pitch: Mm;
  readonly passHeight: Mm;
  readonly cells: Uint8Array;
  readonly areas: Uint16Array;
}
export const HEADER_AREA = 65535;

/** At an edge: make `turns` turns where it stands, then move it by `ends` (positive outward). */
export interface TurnStep {
  readonly turns: number;
  readonly ends: number;
}

/** One pass of a block, woven from one end to another, both included. */
export interface BlockRow {
  readonly pass: number;
  readonly from: number;
  readonly to: number;
}

/** An area one weft weaves without stopping. Ends and passes 0-based. */
export interface Block {
  readonly order: number;
  readonly name: string;
  /** Index into the piece's yarns. */
  readonly yarn: number;
  readonly area: number;
  /**
   * Where the weft begins: `end` is on the block's `side` edge and `to` is where the first pass stops, so the two say
   * where both edges stand before any step is taken. `over` is how the weft passes `end` on that first pass.
   */
  readonly start: {
    readonly end: number;
    readonly to: number;
    readonly side: 'left' | 'right';
    readonly over: boolean;
  };
  readonly rows: readonly BlockRow[];
  readonly left: readonly TurnStep[];
  readonly right: readonly TurnStep[];
  /** Height on the warp at the top of every step of `left` and of `right`, mm above the base: what to tick against marks. */
  readonly heights: { readonly left: readonly number[]; readonly right: readonly number[] };
  /** What to do, in a weaver's sentences. */
  readonly words: readonly string[];
  /** Places in the order of the blocks that must lie under this one. */
  readonly after: readonly number[];
  /** Place of its mirror image in the order, when it has one. */
  readonly partner: number | null;
  /** Place in the order of the block whose weft goes on here, when it wasn't ended: no new tail. */
  readonly continues: number | null;
  /** Places of the blocks whose wefts rise together with this one's, row by row as the plan's sequence says. */
  readonly together: readonly number[];
  /** Said when the block begins with a single pass or was split from a cycle. */
  readonly remarks: readonly string[];
}

/** When blocks rise together: which row of which block comes next. */
export interface SequenceStep {
  readonly block: number;
  readonly row: number;
}

export interface Slit {
  readonly between: readonly [number, number];
  readonly fromPass: number;
  readonly toPass: number;
  readonly lengthMm: number;
  readonly remedy: string;
}

export interface Join {
  readonly block: number;
  readonly pass: number;
  readonly end: number;
}

/** How far a stepped edge strays from the drawn line. */
export interface EdgeError {
  readonly shape: string;
  readonly side: 'left' | 'right';
  /** Largest plain distance in x, mm: what the weaver is shown. */
  readonly largestMm: number;
  /** Height on the cloth where that is, mm. */
  readonly largestAtMm: number;
  /** Largest distance left after half an end and what the line runs in one turn; 0 when the steps are as good as can be. */
  readonly excessMm: number;
}

/** How much of a shape shows in the drawing and how much of it is woven. */
export interface ShapeArea {
  readonly shape: string;
  readonly drawnMm2: number;
  readonly wovenMm2: number;
  /** Cells whose middles lie in what shows: as near as whole passes and ends come to the drawing before any stepping. */
  readonly middlesMm2: number;
  /** Passes on which the shape has an edge inside the cloth, drawn or woven. */
  readonly boundaryRows: number;
}

/** Heights to mark on the strings of one end, mm above the base of the cloth, rising. */
export interface StringMarks {
  readonly end: number;
  readonly heightsMm: readonly number[];
}

/** A block whose edge moves out over another: that one must be woven first, and carries it. */
export interface Overhang {
  readonly block: number;
  readonly over: number;
  readonly side: 'left' | 'right';
  /** How many ends in all. */
  readonly ends: number;
  readonly fromPass: number;
  readonly toPass: number;
}

/** A sum, with its working: shown line by line on request. */
export interface ArithmeticLine {
  readonly label: string;
  /** The working in figures, for example `33 ends × 2 strings × 430 mm`. */
  readonly working: string;
  readonly result: string;
}

export interface Arithmetic {
  readonly title: string;
  readonly lines: readonly ArithmeticLine[];
}
