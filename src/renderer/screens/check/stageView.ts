/** What part of the cloth frame is on screen: `scale` px per mm, and the cloth point in the middle. */
export interface StageView {
  readonly scale: number;
  readonly middleX: number;
  readonly middleY: number;
  readonly width: number;
  readonly height: number;
}

/** Millimetres of room left around the planned cloth. */
const roomBelow = 13;
const roomAbove = 7;
const roomBeside = 9;

/** The whole planned piece, as large as the box allows. */
export function wholePiece(width: number, height: number, planHalfWidth: number, planHeight: number): StageView {
  const spanY = planHeight + roomBelow + roomAbove;
  const spanX = 2 * (planHalfWidth + roomBeside);
  const scale = Math.max(0.05, Math.min(height / spanY, width / spanX));
  // When the width decides, the spare height goes above and below alike.
  return { scale, middleX: 0, middleY: (planHeight + roomAbove - roomBelow) / 2, width, height };
}

export const toScreenX = (view: StageView, x: number): number => view.width / 2 + (x - view.middleX) * view.scale;
export const toScreenY = (view: StageView, y: number): number => view.height / 2 - (y - view.middleY) * view.scale;
export const toClothX = (view: StageView, px: number): number => view.middleX + (px - view.width / 2) / view.scale;
export const toClothY = (view: StageView, py: number): number => view.middleY - (py - view.height / 2) / view.scale;

/** Larger or smaller about a place that stays where it is. */
export function zoomedAt(
  view: StageView,
  factor: number,
  px: number,
  py: number,
  limits: { min: number; max: number },
) {
  const scale = Math.min(limits.max, Math.max(limits.min, view.scale * factor));
  const x = toClothX(view, px);
  const y = toClothY(view, py);
  return {
    ...view,
    scale,
    middleX: x - (px - view.width / 2) / scale,
    middleY: y + (py - view.height / 2) / scale,
  };
}

export const panned = (view: StageView, dx: number, dy: number): StageView => ({
  ...view,
  middleX: view.middleX - dx / view.scale,
  middleY: view.middleY + dy / view.scale,
});
