/** What lies inward of the wood's edge differs from the wood by no more than this share of what lies outward. */
const LIKER = 0.7;

/**
 * Whether wood ends between two places: inward of it the colour is the wood's own, outward it is another. The edge of
 * the frame's shadow runs along the wood, too, but has the table on both sides.
 * @param colours red, green, blue one after another; `wood`, `inward` and `outward` are places in it.
 */
export function woodEnds(colours: Float64Array, wood: number, inward: number, outward: number): boolean {
  let like = 0;
  let unlike = 0;
  for (let c = 0; c < 3; c++) {
    like += (colours[inward + c]! - colours[wood + c]!) ** 2;
    unlike += (colours[outward + c]! - colours[wood + c]!) ** 2;
  }
  return like <= LIKER * LIKER * unlike;
}
