/**
 * Radial lens distortion about the middle of the picture, radii in half-diagonals:
 * r_distorted = r_undistorted (1 + k1 r² + k2 r⁴), r the undistorted radius. Negative k1 is barrel.
 */
export interface Lens {
  readonly centreX: number;
  readonly centreY: number;
  readonly halfDiagonal: number;
  readonly k1: number;
  readonly k2: number;
}
