import type { Piece } from '../model/piece.ts';

/** What the first look expects: the plan's loom and warp, in mm. */
export interface Expected {
  readonly pitch: number;
  readonly notches: number;
  readonly openingWidth: number;
  readonly openingHeight: number;
  readonly bar: number;
  /** Breadth of the rails: a bar's, until the picture shows another. */
  readonly rail: number;
  readonly depth: number;
  readonly ends: number;
  readonly firstNotch: number;
  readonly stringDiameter: number;
  readonly stringsPerEnd: 1 | 2;
  readonly base: number;
}

/** What the plan says the picture should show. */
export function expectedOf(piece: Piece): Expected {
  const { loom, warp, cloth } = piece;
  return {
    pitch: loom.notchPitch,
    notches: loom.notches,
    openingWidth: loom.openingWidth,
    openingHeight: loom.openingHeight,
    bar: loom.bar,
    rail: loom.bar,
    depth: loom.depth,
    ends: warp.ends,
    firstNotch: warp.firstNotch,
    stringDiameter: warp.stringDiameter,
    stringsPerEnd: warp.stringsPerEnd,
    base: cloth.baseAboveBottomBar,
  };
}
