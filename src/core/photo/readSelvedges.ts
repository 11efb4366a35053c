import type { EndReading, SelvedgeRow } from '../model/check.ts';
import { type Beat, MOST_OFF_PLAN } from './beat.ts';
import type { ClothFrame } from './clothFrame.ts';
import { OUTSIDE_PICTURE } from './countEnds.ts';
import { outerEnds, withoutCovered } from './edgeCovered.ts';
import { alongEdge, INSIDE, withoutBeyond } from './edgeFloats.ts';
import type { EndFell } from './endFell.ts';
import { FLOATS_SEEN } from './floatSwing.ts';
import { measureSide } from './measureSelvedge.ts';
import { agreeOnOverhang } from './overhang.ts';
import type { RibCourse } from './ribCourse.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { joinSides, withSide } from './selvedgeRows.ts';
import type { SideReading } from './sideReading.ts';
import { weaveLines } from './weaveLines.ts';

/** What selvedges are looked for in, and beside which ends. */
export interface SelvedgeLook {
  readonly sampler: LoomSampler;
  readonly frame: ClothFrame;
  readonly fells: readonly EndFell[];
  readonly ends: readonly EndReading[];
  /** What unsharpness alone may move an edge by, one sigma, mm. */
  readonly unsharp: number;
  /** One sigma of x that all places share, mm. */
  readonly common: (x: number, y: number) => number;
}

/** How the floats of this cloth are seen. */
export interface FloatsShown {
  readonly course: RibCourse;
  readonly beat: Beat;
  /** How much they swing as a rule, from `usualSwing`. */
  readonly usual: number;
}

/** Both selvedges by height, as their edges alone tell. */
export function readSelvedges(look: SelvedgeLook, onSide: (done: number) => void): SelvedgeRow[] {
  onSide(0);
  const left = sideOf(look, 'left', false);
  onSide(1);
  const right = sideOf(look, 'right', false);
  const agreed = agreeOnOverhang(left, right, look.ends, look.frame);
  return joinSides(agreed.left, agreed.right, look.common);
}

/** A side of which less than this share is borne out is looked for again, close to its end. */
const MOSTLY = 0.7;

/** The selvedges that floats bear out; a side that mostly isn't is looked for again close to its end. */
export function selvedgesBorneOut(
  look: SelvedgeLook,
  selvedge: readonly SelvedgeRow[],
  floats: FloatsShown,
): SelvedgeRow[] {
  let clear = edgesOfCloth(look, selvedge, floats);
  for (const which of ['left', 'right'] as const) {
    const read = (rows: readonly SelvedgeRow[]): number => rows.filter((row) => row[which]).length;
    if (read(clear) >= MOSTLY * read(selvedge)) continue;
    const again = sideOf(look, which, true);
    const [left, right] = which === 'left' ? [again, []] : [[], again];
    clear = withSide(clear, edgesOfCloth(look, joinSides(left, right, look.common), floats), which);
  }
  return clear;
}

/** @param closely no farther from the outer end than weft can reach. */
function sideOf(
  { sampler, frame, fells, ends, unsharp }: SelvedgeLook,
  which: 'left' | 'right',
  closely: boolean,
): SideReading[] {
  // Where the outer notch is empty, the weft turns round the next end.
  const outer = outerEnds(ends)[which][0];
  if (outer === undefined) return [];
  const reading = ends.find((end) => end.index === outer);
  if (reading?.why === OUTSIDE_PICTURE) return [];
  const known = fells.filter((fell) => fell.fell);
  if (known.length === 0) return [];
  // Where the outer end itself isn't seen, its neighbour says how high to look.
  const nearest = known.reduce((a, b) => (Math.abs(b.end - outer) < Math.abs(a.end - outer) ? b : a));
  const top = reading?.fell?.value ?? nearest.fell!.value;
  const planned = frame.endX(outer);
  // Its string may have been followed though its fell isn't seen.
  const course = fells.find((fell) => fell.end === outer)?.course;
  const followed = course && course.x(top + frame.baseY) - frame.centreX;
  const atFell = reading?.xAtFell?.value ?? followed ?? planned;
  const x = (y: number): number => planned + (atFell - planned) * Math.min(1, y / Math.max(1, top));
  return measureSide(sampler, frame, which, x, top, unsharp, closely);
}

/** Rows without the edges over which something lies, and those beyond the cloth. */
function edgesOfCloth(
  { sampler, frame, ends }: SelvedgeLook,
  selvedge: readonly SelvedgeRow[],
  { course, beat, usual }: FloatsShown,
): SelvedgeRow[] {
  // To as far above the topmost selvedge as a look at the floats reaches.
  const y = Math.max(0, ...selvedge.map((row) => row.y)) + FLOATS_SEEN * MOST_OFF_PLAN * frame.planPass;
  const outer = outerEnds(ends);
  const along = (of: readonly number[]) =>
    weaveLines(
      sampler,
      frame,
      course,
      of.map((end) => ({ end, y })),
    );
  let rows = withoutCovered(selvedge, { left: along(outer.left), right: along(outer.right) }, beat, usual);
  for (const side of ['left', 'right'] as const) {
    const edge = alongEdge(rows, side);
    const end = outer[side][0];
    if (!edge || end === undefined) continue;
    const inward = side === 'left' ? frame.pitch : -frame.pitch;
    const inside = INSIDE.flatMap((share) =>
      weaveLines(sampler, frame, (_, height) => edge(height) + share * inward, [{ end, y }]),
    );
    rows = withoutBeyond(rows, side, inside, beat, usual);
  }
  return rows;
}
