/**
 * Branded numbers. A brand costs nothing at run time; it stops a pixel being passed where a millimetre belongs.
 * Make one with the function of the same name in lower case; arithmetic gives back a plain number, so a result
 * is branded again on purpose.
 */
declare const unit: unique symbol;
type Branded<Name extends string> = number & { readonly [unit]: Name };

/** A length in millimetres, in no particular frame. */
export type Mm = Branded<'mm'>;
/** Millimetres in the cloth frame: x right from the middle of the planned warp, y up from the top of the twining. */
export type ClothMm = Branded<'mm'> & { readonly frame?: 'cloth' };
/** Millimetres in the loom frame: x right from the middle of the opening, y up from the bottom bar's inner edge. */
export type LoomMm = Branded<'mm'> & { readonly frame?: 'loom' };
/** Pixels of the photograph as displayed (EXIF turn applied), origin at the top left. */
export type PhotoPx = Branded<'px'>;
export type Grams = Branded<'g'>;
export type Metres = Branded<'m'>;
/** Linear density: grams per kilometre. */
export type Tex = Branded<'tex'>;
export type Radians = Branded<'rad'>;
/** Index of an end (one working warp unit), 0 at the left. */
export type EndIndex = Branded<'end'>;
/** Index of a pass (one trip of the weft), 0 lowest, header included. */
export type PassIndex = Branded<'pass'>;

export const mm = (value: number): Mm => value as Mm;
export const clothMm = (value: number): ClothMm => value as ClothMm;
export const loomMm = (value: number): LoomMm => value as LoomMm;
export const photoPx = (value: number): PhotoPx => value as PhotoPx;
export const grams = (value: number): Grams => value as Grams;
export const metres = (value: number): Metres => value as Metres;
export const tex = (value: number): Tex => value as Tex;
export const radians = (value: number): Radians => value as Radians;
export const endIndex = (value: number): EndIndex => value as EndIndex;
export const passIndex = (value: number): PassIndex => value as PassIndex;

/** Exactly 25.4 mm. */
export const MM_PER_INCH = 25.4;

export interface ClothPoint {
  readonly x: ClothMm;
  readonly y: ClothMm;
}
export interface LoomPoint {
  readonly x: LoomMm;
  readonly y: LoomMm;
}
export interface PhotoPoint {
  readonly x: PhotoPx;
  readonly y: PhotoPx;
}
