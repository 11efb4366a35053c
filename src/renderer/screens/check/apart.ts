/** Room one mark takes, px, and how near its middle may come to the border. */
const ROOM = 34;
const BORDER = 14;

/**
 * Where marks stand beside the picture so that none hides another: as near to their own heights as that allows.
 * @param heights px from the top, in order. @param height of the picture, px.
 */
export function apart(heights: readonly number[], height: number): readonly number[] {
  const tops: number[] = [];
  for (const each of heights) tops.push(Math.max(each, (tops.at(-1) ?? BORDER - ROOM) + ROOM));
  let most = height - BORDER;
  for (let at = tops.length - 1; at >= 0; at--) {
    tops[at] = Math.min(tops[at]!, most);
    most = tops[at]! - ROOM;
  }
  return tops;
}
