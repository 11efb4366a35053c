import type { FittedLens } from '../model/check.ts';
import type { Marks } from '../model/marks.ts';
import type { Stage } from '../model/stage.ts';
import type { CameraPrior } from './coarseCamera.ts';
import type { EarlierReference } from './earlierReference.ts';
import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import type { ColourRaster } from './reduce.ts';

export interface LocateOptions {
  /** What the weaver marked in the picture; null to find the loom without. */
  readonly marks?: Marks | null;
  /** The picture shows left for right. Told by three or four marked corners themselves when there are any. */
  readonly mirrored?: boolean;
  /** What earlier pictures by the same camera showed of its lens. */
  readonly lens?: FittedLens | null;
  /** What an earlier check of the same piece says of this picture's pose, where it shows the same loom beyond doubt. */
  readonly earlier?: EarlierReference | null;
  /** A line of inner figures for a maintainer. */
  readonly trace?: (line: string) => void;
  readonly onStage?: (name: Stage, done: number, of: number) => void;
}

/**
 * What is given with a picture. Referring it to an earlier check takes longer than all else: it is asked for, once at
 * most, where the picture doesn't place itself.
 */
export type LoomOptions = Omit<LocateOptions, 'earlier'> & {
  readonly earlier?: (() => EarlierReference | null) | null;
  /** Whether it is mirrored is only likely: nobody said so of this very picture or of its camera. */
  readonly mirroredLikely?: boolean;
};

/** One picture and what is looked for in it. */
export interface View {
  readonly photo: Photo;
  /** A copy reduced by `factor`. */
  readonly picture: ColourRaster;
  readonly factor: number;
  readonly expected: Expected;
  readonly prior: CameraPrior;
  readonly mirrored: boolean;
}
