import type { Mm, PhotoPoint } from './units.ts';

/** Two places in the plane of the strings and how far apart they lie: two strokes of a ruler on the warp, say. */
export interface KnownLength {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly length: Mm;
}

/** What the weaver marked in a photograph to tie it to millimetres. */
export interface Marks {
  /** The opening's inner corners: the loom's bottom left, bottom right, top right, top left; null where not marked. */
  readonly corners: readonly (PhotoPoint | null)[];
  readonly lengths: readonly KnownLength[];
  /** Corners of a bank-size card (ISO/IEC 7810 ID-1) lying on the warp, one after the other round it. */
  readonly card: readonly PhotoPoint[] | null;
}

/** The four inner corners and nothing else. */
export const fourCorners = (corners: readonly PhotoPoint[]): Marks => ({ corners, lengths: [], card: null });

export const cornersMarked = (marks: Marks | null | undefined): number =>
  marks ? marks.corners.filter((corner) => corner !== null).length : 0;
