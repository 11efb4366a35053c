import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';
import { median } from './statistics.ts';

export type FrameSide = 'bottom' | 'top' | 'left' | 'right';

/** Places looked at along one side. */
const LOOKS = 24;
/** A face that differs from the other sides' wood by fewer colour steps is wood in another light. */
const FEWEST_STEPS = 30;
/** How many times as far from the wood as from what lies beside it a face must be to be no wood. */
const UNLIKE = 2.5;

/**
 * The side whose face doesn't look like the other sides' wood but like what lies outside it: there is table where the
 * look has wood. Null when there is none.
 * @param toSmall loom mm (z above the strings' plane) to pixels of `picture`.
 */
export function oddSide(
  picture: ColourRaster,
  toSmall: (x: number, y: number, z?: number) => { x: number; y: number },
  expected: Expected,
): FrameSide | null {
  const half = expected.openingWidth / 2;
  const height = expected.openingHeight;
  const depth = -expected.stringDiameter / 2;
  const colour = new Float64Array(3);
  /** Colours `out` bars outside the opening, along one side. */
  const along = (side: FrameSide, out: number): number[][] => {
    const seen: number[][] = [];
    for (let k = 0; k < LOOKS; k++) {
      const share = (k + 0.5) / LOOKS;
      const aside = out * expected.bar;
      const [x, y] =
        side === 'bottom' || side === 'top'
          ? [-half + 2 * half * share, side === 'bottom' ? -aside : height + aside]
          : [side === 'left' ? -half - aside : half + aside, height * share];
      const at = toSmall(x, y, depth);
      if (!insidePicture(picture, at.x, at.y)) continue;
      sampleColour(picture, at.x, at.y, colour, 0);
      seen.push([...colour]);
    }
    return seen;
  };
  const middle = (colours: readonly number[][]): number[] | null =>
    colours.length < LOOKS / 3 ? null : [0, 1, 2].map((c) => median(colours.map((one) => one[c]!)));
  const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((part, c) => part - b[c]!));
  // Rails may be narrower than the bars.
  const sides = (['bottom', 'top', 'left', 'right'] as const).map((side) => {
    return { side, face: along(side, side === 'bottom' || side === 'top' ? 0.55 : 0.3) };
  });
  for (const { side, face } of sides) {
    const here = middle(face);
    const wood = middle(sides.flatMap((other) => (other.side === side ? [] : other.face)));
    const beside = middle(along(side, 1.35));
    if (!here || !wood || !beside) continue;
    const unlike = apart(here, wood);
    if (unlike > FEWEST_STEPS && unlike > UNLIKE * apart(here, beside)) return side;
  }
  return null;
}
