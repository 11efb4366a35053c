/** A place in whatever frame the drawing at hand uses. */
export interface PlainPoint {
  readonly x: number;
  readonly y: number;
}
