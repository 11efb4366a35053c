import type { PictureSize } from './camera.ts';

/** A place of a picture, px. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A four-sided figure of a picture, its corners going round. */
export type FourCorners = readonly [Place, Place, Place, Place];

/** The map that takes a w × h rectangle about its middle, its corners going round, to a four-sided figure. */
export function rectangleMap([p, q, r, s]: FourCorners, w: number, h: number): (x: number, y: number) => Place {
  // P. Heckbert, "Fundamentals of texture mapping and image warping", 1989: unit square to quadrilateral.
  const sx = p.x - q.x + r.x - s.x;
  const sy = p.y - q.y + r.y - s.y;
  const dx1 = q.x - r.x;
  const dx2 = s.x - r.x;
  const dy1 = q.y - r.y;
  const dy2 = s.y - r.y;
  const det = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / det;
  const k = (dx1 * sy - sx * dy1) / det;
  const a = q.x - p.x + g * q.x;
  const b = s.x - p.x + k * s.x;
  const d = q.y - p.y + g * q.y;
  const e = s.y - p.y + k * s.y;
  return (x, y) => {
    const u = x / w + 0.5;
    const v = y / h + 0.5;
    const scale = 1 / (g * u + k * v + 1);
    return { x: (a * u + b * v + p.x) * scale, y: (d * u + e * v + p.y) * scale };
  };
}

/**
 * Columns of the plane's picture along both directions of a rectangle, w × h, from the vanishing shares along them.
 * Hartley and Zisserman, Multiple View Geometry, 8.1.
 */
export function planeColumns(
  corners: FourCorners,
  w: number,
  h: number,
  { width, height }: PictureSize,
): readonly [across: readonly [number, number, number], along: readonly [number, number, number]] {
  const map = rectangleMap(corners, w, h);
  const middle = map(0, 0);
  const column = (x: number, y: number): [number, number, number] => {
    const ahead = map(x, y);
    const behind = map(-x, -y);
    // A point t along the direction is seen at (middle + t c) / (1 + t g): both halves give c and g.
    const far = Math.hypot(ahead.x - middle.x, ahead.y - middle.y);
    const near = Math.hypot(behind.x - middle.x, behind.y - middle.y);
    const g = (near - far) / (near + far);
    const size = Math.hypot(x, y);
    return [
      ((1 + g) * ahead.x - middle.x - (g * width) / 2) / size,
      ((1 + g) * ahead.y - middle.y - (g * height) / 2) / size,
      g / size,
    ];
  };
  return [column(w / 2, 0), column(0, h / 2)];
}

/** Breadth over height of the rectangle that a camera of a focal length sees as a four-sided figure. */
export function proportions(corners: FourCorners, picture: PictureSize, focal: number): number {
  const [across, along] = planeColumns(corners, 1, 1, picture).map(([x, y, z]) => Math.hypot(x / focal, y / focal, z));
  return across! / along!;
}
