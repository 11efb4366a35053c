/** Least share by which wood must end at its edge. */
const ENDS = 0.3;

/**
 * How far wood ends between two places, 0 to 1: inward of it the colour is the wood's own, outward it is another. The
 * edge of the frame's shadow runs along the wood, too, but has the table on both sides.
 * @param colours red, green, blue one after another; `wood`, `inward` and `outward` are places in it.
 */
export function woodEnding(colours: Float64Array, wood: number, inward: number, outward: number): number {
  let like = 0;
  let unlike = 0;
  for (let c = 0; c < 3; c++) {
    like += (colours[inward + c]! - colours[wood + c]!) ** 2;
    unlike += (colours[outward + c]! - colours[wood + c]!) ** 2;
  }
  return unlike > like ? 1 - Math.sqrt(like / unlike) : 0;
}

/** Whether wood ends there, as `woodEnding`. */
export const woodEnds = (colours: Float64Array, wood: number, inward: number, outward: number): boolean =>
  woodEnding(colours, wood, inward, outward) >= ENDS;
