import type { Box } from '../geometry/box.ts';
import type { Piece, Shape } from '../model/piece.ts';
import { clothMm } from '../model/units.ts';
import { moveShape, resizeShape } from './place.ts';
import { shapeBox } from './shapeBox.ts';

/** What the cloth is counted in: ends across, turns (two passes) up. */
export interface WeavingGrid {
  readonly ends: number;
  /** mm from end to end. */
  readonly pitch: number;
  /** mm. */
  readonly passHeight: number;
}

export const weavingGrid = (piece: Pick<Piece, 'warp' | 'loom' | 'cloth'>): WeavingGrid => ({
  ends: piece.warp.ends,
  pitch: piece.loom.notchPitch,
  passHeight: piece.cloth.passHeight,
});

/** The cloth's edges as far as planning goes: ends × pitch wide, from the twining up. */
export function clothBox(piece: Pick<Piece, 'warp' | 'loom' | 'cloth'>): Box {
  const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
  return { left: -half, right: half, bottom: 0, top: piece.cloth.height };
}

/** The nearest line between two ends, or selvedge, mm. */
export const snapToEndEdge = (x: number, grid: WeavingGrid): number => {
  const half = grid.ends / 2;
  return (Math.round(x / grid.pitch + half) - half) * grid.pitch;
};

/** The nearest line between two ends or middle of an end: a point of a shape may come out on one end or between two. */
export const snapToHalfEnd = (x: number, grid: WeavingGrid): number =>
  (Math.round((2 * x) / grid.pitch) * grid.pitch) / 2;

/** The nearest height a whole number of turns above the base, mm. */
export const snapToTurn = (y: number, grid: WeavingGrid): number =>
  Math.round(y / (2 * grid.passHeight)) * 2 * grid.passHeight;

/** A point of a shape, to the nearest half end and whole turn. */
export const snapPoint = (x: number, y: number, grid: WeavingGrid) => ({
  x: clothMm(snapToHalfEnd(x, grid)),
  y: clothMm(snapToTurn(y, grid)),
});

/** A corner of the box a shape is drawn in: its sides stand between ends, so that an upright edge is woven where it is. */
export const snapCorner = (x: number, y: number, grid: WeavingGrid) => ({
  x: clothMm(snapToEndEdge(x, grid)),
  y: clothMm(snapToTurn(y, grid)),
});

/** The shape moved, size kept, so its box's nearer side stands on the edge of an end and its foot on a whole turn. */
export function snapShape(shape: Shape, grid: WeavingGrid, cloth: Box): Shape {
  const box = shapeBox(shape, cloth);
  if (box === null) return shape;
  const left = snapToEndEdge(box.left, grid) - box.left;
  const right = snapToEndEdge(box.right, grid) - box.right;
  const dx = Math.abs(left) <= Math.abs(right) ? left : right;
  return moveShape(shape, shape.form.kind === 'band' ? 0 : dx, snapToTurn(box.bottom, grid) - box.bottom);
}

/** The shape moved and stretched so both sides stand on edges of ends, and foot and head on whole turns. */
export function fitShapeToGrid(shape: Shape, grid: WeavingGrid, cloth: Box): Shape {
  if (shape.rotation !== 0) return snapShape(shape, grid, cloth);
  const box = shapeBox(shape, cloth);
  if (box === null) return shape;
  const left = snapToEndEdge(box.left, grid);
  const bottom = snapToTurn(box.bottom, grid);
  const width = Math.max(grid.pitch, snapToEndEdge(box.right, grid) - left);
  const height = Math.max(2 * grid.passHeight, snapToTurn(box.top, grid) - bottom);
  return resizeShape(shape, shape.form.kind === 'band' ? { height, bottom } : { width, height, left, bottom }, cloth);
}

/** The shape moved by whole ends to the right and whole turns up; negative counts go left and down. */
export const nudgeShape = (shape: Shape, ends: number, turns: number, grid: WeavingGrid): Shape =>
  moveShape(shape, ends * grid.pitch, turns * 2 * grid.passHeight);
