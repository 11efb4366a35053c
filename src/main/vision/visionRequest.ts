import type { FittedLens, LoomReading, ReferenceReading } from '../../core/model/check.ts';
import type { Marks } from '../../core/model/marks.ts';
import type { Outcome } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Stage } from '../../core/model/stage.ts';
import type { DisplayImage } from '../decode/displayJpeg.ts';
import type { PhotoTag } from '../decode/inspectPhoto.ts';
import type { PhotoMetadata } from '../decode/photoMetadata.ts';
import type { FrontOnRectangle } from './frontOn.ts';

/** An earlier check's photograph that a new one may be referred to. */
export interface EarlierPhoto {
  readonly bytes: Uint8Array;
  readonly marks: Marks | null;
  readonly camera: string | null;
  /** Fell of every end as the check had it, cloth mm. */
  readonly fells: readonly (number | null)[];
  /** ISO 8601 instant by which the weaver knows the check. */
  readonly when: string;
}

/** What the worker can be asked. Bytes are a photograph's original bytes; it decodes them itself. */
export type VisionRequest =
  | {
      readonly kind: 'measure';
      readonly bytes: Uint8Array;
      readonly piece: Piece;
      readonly marks: Marks | null;
      /** The device, where it is known without the picture's own words. */
      readonly camera: string | null;
      /** What the weaver said of cameras: whether their pictures are turned over as in a looking-glass. */
      readonly cameras: readonly { readonly name: string | null; readonly mirrors: boolean }[];
      /** What the weaver said of this very picture; null when nothing. */
      readonly mirrored: boolean | null;
      /** What earlier photographs showed of cameras' lenses. */
      readonly lenses: readonly { readonly camera: string; readonly lens: FittedLens }[];
      readonly earlier: EarlierPhoto | null;
    }
  | {
      readonly kind: 'image';
      readonly bytes: Uint8Array;
      readonly fit: { readonly width?: number; readonly height?: number };
    }
  | {
      readonly kind: 'front-on';
      readonly bytes: Uint8Array;
      readonly piece: Piece;
      readonly reference: ReferenceReading;
      readonly rectangle: FrontOnRectangle;
    };

export interface MeasuredAnswer {
  readonly width: number;
  readonly height: number;
  readonly metadata: PhotoMetadata;
  readonly reading: LoomReading;
}

/** What comes back for each kind of question. */
export interface VisionAnswers {
  readonly measure: MeasuredAnswer;
  readonly image: DisplayImage;
  readonly 'front-on': DisplayImage;
}

export type VisionTag = PhotoTag | 'cancelled' | 'internal';

export type VisionMessage =
  | { readonly kind: 'stage'; readonly stage: Stage; readonly done: number; readonly of: number }
  | { readonly kind: 'answer'; readonly outcome: Outcome<VisionAnswers[keyof VisionAnswers], VisionTag> };
