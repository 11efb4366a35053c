/** A photograph as displayed (EXIF turn applied), 8-bit sRGB, row-major from the top left, three bytes a pixel. */
export interface Photo {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
  /** The focal length that its file tells, in diagonals of the picture; absent where it tells none. */
  readonly focal?: number;
}

/** One channel of numbers, row-major from the top left. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}
