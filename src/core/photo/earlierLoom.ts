import type { Camera } from './camera.ts';
import type { WoodShape } from './coarseCamera.ts';
import type { Photo } from './raster.ts';

/** A kept photograph of the same loom, tied to millimetres by what it shows itself. */
export interface EarlierLoom {
  readonly photo: Photo;
  /** The camera that took it, and what it shows of the wood. */
  readonly camera: Camera;
  readonly wood: WoodShape;
  /** `FITTED` × `FITTED`, as of a fitted pose. */
  readonly covariance: Float64Array;
  readonly mirrored: boolean;
  /** Fell of every end, loom y, mm; null where it wasn't seen. */
  readonly fells: readonly (number | null)[];
  /** ISO 8601 instant by which the weaver knows the check. */
  readonly when: string;
}

/** A place of the loom in the earlier photograph, and where something that looks the same lies in the new one. */
export interface LookAlike {
  /** Loom mm, on the face that is seen there. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** px of the new photograph. */
  readonly px: number;
  readonly py: number;
}
