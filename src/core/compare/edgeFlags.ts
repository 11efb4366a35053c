import { type BothUnits, inBothUnits } from '../model/bothUnits.ts';
import type { Flag } from '../model/check.ts';
import { deviationAsFinding } from '../model/deviationWords.ts';
import type { LengthUnits } from '../model/lengthWords.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import { measurement } from '../model/measurement.ts';
import type { EdgeCourse } from './edgeCourse.ts';

/** Where an edge is farthest from plan one way, and since when. */
interface Farthest {
  readonly y: number;
  readonly out: number;
  readonly sigma: number;
  readonly since: number;
}

/**
 * Draw-in and spreading of both edges: a flag needs the deviation to exceed the allowance and twice its sigma.
 */
export function edgeFlags(courses: readonly EdgeCourse[], allowance: number): Flag[] {
  const flags: Flag[] = [];
  for (const way of [-1, 1] as const) {
    const found = courses.map((course) => farthest(course, way));
    const sizes = found.map((one) => (one ? Math.abs(one.out) : 0));
    courses.forEach((course, i) => {
      const one = found[i];
      if (!one || Math.abs(one.out) <= allowance || Math.abs(one.out) <= 2 * one.sigma) return;
      const other = sizes[1 - i] ?? 0;
      const both = other > 0.5 * Math.abs(one.out) && other > 0.5 * allowance;
      flags.push(way < 0 ? drawIn(course, one, both) : spreading(course, one, both));
    });
  }
  return flags;
}

function farthest(course: EdgeCourse, way: -1 | 1): Farthest | null {
  let best: EdgeCourse['points'][number] | null = null;
  for (const point of course.points) if (!best || point.out * way > best.out * way) best = point;
  if (!best || best.out * way <= 0) return null;
  // Since: going down from there, the last height that was still under a third of it.
  let since = 0;
  for (const point of course.points) {
    if (point.y >= best.y) break;
    if (point.out * way < (best.out * way) / 3) since = point.y;
  }
  return { ...best, since };
}

const figureWords = (one: Farthest, units: LengthUnits): string => {
  const finding = deviationAsFinding(measurement(one.out, one.sigma, 1, 'selvedge'), 'across', units);
  return `${finding.figure}, ${finding.giveOrTake}`;
};

function flagOf(kind: Flag['kind'], course: EdgeCourse, one: Farthest, message: BothUnits, advice: string): Flag {
  return {
    kind,
    side: course.side,
    yMm: one.y,
    xMm: null,
    ends: [],
    deviationMm: one.out,
    sigmaMm: one.sigma,
    message,
    advice,
  };
}

function drawIn(course: EdgeCourse, one: Farthest, both: boolean): Flag {
  const side = course.side === 'left' ? 'Left' : 'Right';
  const top = course.points[course.points.length - 1];
  const eased = top !== undefined && top.y - one.y > 8 && top.out > 0.5 * one.out;
  const message = inBothUnits((units) =>
    eased
      ? `${side} edge drew in at ${lengthInWords(one.y, units)} up and came back. ${figureWords(one, units)}.`
      : `${side} edge drawing in since ${lengthInWords(one.since, units)} up. ${figureWords(one, units)}.`,
  );
  let advice = `Leave the weft slacker at the ${course.side} for the next 6 turns.`;
  if (eased) advice = 'Nothing to do at the loom now; keep laying the weft as you do.';
  else if (both) advice = 'Lay the weft at a steeper slant before beating, so each pass has more length.';
  return flagOf('draw-in', course, one, message, advice);
}

function spreading(course: EdgeCourse, one: Farthest, both: boolean): Flag {
  const side = course.side === 'left' ? 'Left' : 'Right';
  const message = inBothUnits(
    (units) => `${side} edge spreading since ${lengthInWords(one.since, units)} up. ${figureWords(one, units)}.`,
  );
  const advice = both
    ? 'Lay the weft flatter before beating: each pass has more length than it needs.'
    : `Draw the weft a little closer round the ${course.side} end for the next 6 turns.`;
  return flagOf('spreading', course, one, message, advice);
}
