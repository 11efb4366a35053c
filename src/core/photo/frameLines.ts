import { boldEdges, type ColourEdges } from './colourEdges.ts';
import { LineVotes, type StraightLine } from './straightLines.ts';

/** Two families of lines about at right angles, one of which the bars may run along. */
export interface FrameLines {
  readonly along: readonly StraightLine[];
  readonly across: readonly StraightLine[];
}

/** Lines tried per family, and how far they may lean from it, degrees: a slanting view turns them. */
const LINES = 20;
const OUTERMOST = 7;
/** Of lines along bold edges so many, which a striped table's many lines might crowd out. */
const BOLD_LINES = 8;
const BOLD_OUTERMOST = 5;
/** Two lines no farther from each other than this, px and degrees, are the same. */
const SAME_PLACE = 4;
const SAME_WAY = 2;
const LEAN = 13;
/** Long lines that may be edges of a frame. */
export function frameLines(edges: ColourEdges): FrameLines[] {
  const votes = new LineVotes(edges);
  const bold = new LineVotes(boldEdges(edges));
  return votes.rightAngles(3).map((direction) => {
    const family = (towards: number): StraightLine[] =>
      apartFrom(votes.family(towards, LEAN, LINES, OUTERMOST), bold.family(towards, LEAN, BOLD_LINES, BOLD_OUTERMOST));
    return { along: family(direction), across: family(direction + 90) };
  });
}

/** Some lines and those of the others that aren't among them. */
function apartFrom(some: readonly StraightLine[], others: readonly StraightLine[]): StraightLine[] {
  const same = (a: StraightLine, b: StraightLine): boolean =>
    Math.abs(a.distance - b.distance) <= SAME_PLACE && Math.abs(a.direction - b.direction) <= SAME_WAY;
  return [...some, ...others.filter((line) => !some.some((other) => same(line, other)))];
}
