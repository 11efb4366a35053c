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
 * How far an edge of a rendered photograph lies out from plan at a height, by the truth file: against its outer end's
 * planned x and the overhang the lowest 10 mm show. Only the tests read it.
 */
export function trueEdge(
  name: string,
  side: 'left' | 'right',
  warp: { readonly ends: number; readonly pitch: number },
  height: number,
): number {
  const truth = JSON.parse(readFileSync(fixture(`${name}.truth.json`), 'utf8')) as Truth;
  const outer = ((warp.ends - 1) / 2) * warp.pitch;
  const beyond = (row: Truth['selvedge'][number], of: 'left' | 'right'): readonly number[] => {
    const x = of === 'left' ? row.left_mm : row.right_mm;
    return x === null ? [] : [Math.abs(x) - outer];
  };
  const low = truth.selvedge.filter((row) => row.y_mm <= 10);
  const overhang = median(low.flatMap((row) => [...beyond(row, 'left'), ...beyond(row, 'right')]));
  const near = truth.selvedge.filter((row) => Math.abs(row.y_mm - height) <= 6);
  return median(near.flatMap((row) => beyond(row, side))) - overhang;
}
