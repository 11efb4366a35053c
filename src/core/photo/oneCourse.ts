import type { SideReading } from './sideReading.ts';
import { median } from './statistics.ts';

/** No hand draws a selvedge in faster than this, mm for every mm of height, besides what one turn may reach. */
const STEEPEST = 0.3;
const ONE_TURN = 1;

/**
 * A selvedge is one course. Where readings fall into stretches that no selvedge could join, the stretch nearest to
 * where the outer end says it should be is believed, and what can be reached from it; the rest is something else's edge.
 */
export function oneCourse(readings: readonly SideReading[], expected: (y: number) => number): SideReading[] {
  const seen = readings.filter((reading) => reading.x);
  const joins = (a: SideReading, b: SideReading): boolean =>
    Math.abs(a.x!.value - b.x!.value) <= ONE_TURN + STEEPEST * Math.abs(a.y - b.y);
  const stretches: SideReading[][] = [];
  for (const reading of seen) {
    const last = stretches.at(-1);
    if (last && joins(last.at(-1)!, reading)) last.push(reading);
    else stretches.push([reading]);
  }
  if (stretches.length < 2) return [...readings];
  // The larger half of a stretch decides; a short one near the expected place may be there by chance.
  const away = (stretch: readonly SideReading[]): number =>
    median(stretch.map((reading) => Math.abs(reading.x!.value - expected(reading.y)))) + 3 / stretch.length;
  const first = stretches.reduce((a, b) => (away(b) < away(a) ? b : a));
  const at = stretches.indexOf(first);
  const believed = new Set(first);
  const walk = (
    others: readonly SideReading[][],
    nearest: SideReading,
    facing: (s: SideReading[]) => SideReading[],
  ) => {
    let from = nearest;
    for (const stretch of others) {
      const [near, far] = facing(stretch);
      if (!joins(from, near!)) continue;
      for (const reading of stretch) believed.add(reading);
      from = far!;
    }
  };
  walk(stretches.slice(at + 1), first.at(-1)!, (s) => [s[0]!, s.at(-1)!]);
  walk(stretches.slice(0, at).reverse(), first[0]!, (s) => [s.at(-1)!, s[0]!]);
  return readings.map((reading) => (reading.x && !believed.has(reading) ? { y: reading.y, x: null } : reading));
}
