import { notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';
import { median } from './statistics.ts';

export type FrameSide = 'bottom' | 'top' | 'left' | 'right';

/** Places looked at along one side; if so many of them lie beside the warp, a bar is looked at there. */
const LOOKS = 24;
const BESIDE = 5;
/** A face that differs from the other sides' wood by fewer colour steps is wood in another light. */
const FEWEST_STEPS = 30;
/** How many times as far from the wood as from what lies beside it a face must be to be no wood. */
const UNLIKE = 2.5;

/** What lies inside and outside a face, bars from the opening; teeth and their shade may lie in one of the places. */
const INSIDE = -0.4;
const OUTSIDE = [1.35, 1.7, 2.1] as const;

/**
 * The side whose face doesn't look like the other sides' wood but like what lies outside it, or outside which their wood
 * begins: there is table where the look has wood. Null when there is none.
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
  const shares = Array.from({ length: LOOKS }, (_, k) => (k + 0.5) / LOOKS);
  const across = shares.map((share) => (2 * share - 1) * half);
  const warpFrom = notchX(expected, expected.firstNotch) - expected.pitch;
  const warpTo = notchX(expected, expected.firstNotch + expected.ends);
  // Strings and the cardboard behind them may be of the wood's colour.
  const beside = across.filter((x) => x < warpFrom || x > warpTo);
  const alongBars = beside.length < BESIDE ? across : beside;
  /** Colours `out` bars outside the opening, along one side. */
  const along = (side: FrameSide, out: number): number[][] => {
    const colours: number[][] = [];
    const aside = out * expected.bar;
    const places =
      side === 'bottom' || side === 'top'
        ? alongBars.map((x) => ({ x, y: side === 'bottom' ? -aside : height + aside }))
        : shares.map((share) => ({ x: side === 'left' ? -half - aside : half + aside, y: height * share }));
    for (const { x, y } of places) {
      const at = toSmall(x, y, depth);
      if (!insidePicture(picture, at.x, at.y)) continue;
      sampleColour(picture, at.x, at.y, colour, 0);
      colours.push([...colour]);
    }
    return colours;
  };
  const middle = (colours: readonly number[][]): number[] =>
    [0, 1, 2].map((c) => median(colours.map((one) => one[c]!)));
  const seen = (side: FrameSide, out: number): number[] | null => {
    const colours = along(side, out);
    return colours.length < BESIDE ? null : middle(colours);
  };
  const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((part, c) => part - b[c]!));
  // Rails may be narrower than the bars.
  const sides = (['bottom', 'top', 'left', 'right'] as const).map((side) => {
    return { side, here: seen(side, side === 'bottom' || side === 'top' ? 0.55 : 0.3) };
  });
  for (const { side, here } of sides) {
    // Each of the other sides counts alike: both rails may stand aside.
    const others = sides.flatMap((other) => (other.side === side || !other.here ? [] : [other.here]));
    const wood = others.length < 2 ? null : middle(others);
    const [inside, outside, ...farther] = [INSIDE, ...OUTSIDE].map((out) => seen(side, out));
    if (!here || !wood || !inside || !outside) continue;
    const unlike = apart(here, wood);
    if (unlike <= FEWEST_STEPS) continue;
    if (unlike > UNLIKE * apart(here, outside)) return side;
    // Where wood only begins beyond, the table reaches over the face from inside the opening, in the wood's shade.
    const beyond = [outside, ...farther].some((colour) => colour && unlike > UNLIKE * apart(colour, wood));
    if (beyond && unlike > apart(here, inside)) return side;
  }
  return null;
}
