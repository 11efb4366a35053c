import { readFileSync } from 'node:fs';
import { fixture } from './app.ts';

interface Truth {
  readonly selvedge: readonly {
    readonly y_mm: number;
    readonly left_mm: number | null;
    readonly right_mm: number | null;
  }[];
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/**
 * How far the right edge of a rendered sequence photograph lies out from plan at a height, by the truth file: against
 * its outer end's planned x and the overhang the lowest 10 mm show. Only the tests read it.
 */
export function trueRightEdge(name: string, ends: number, pitch: number, height: number): number {
  const truth = JSON.parse(readFileSync(fixture(`sequence/${name}.truth.json`), 'utf8')) as Truth;
  const outer = ((ends - 1) / 2) * pitch;
  const low = truth.selvedge.filter((row) => row.y_mm <= 10);
  const overhang = median(
    low.flatMap((row) => [
      ...(row.left_mm === null ? [] : [-outer - row.left_mm]),
      ...(row.right_mm === null ? [] : [row.right_mm - outer]),
    ]),
  );
  const near = truth.selvedge.filter((row) => Math.abs(row.y_mm - height) <= 6 && row.right_mm !== null);
  return median(near.map((row) => row.right_mm! - outer - overhang));
}
