import type { Cloth } from './cloth.ts';
import type { WovenPass } from './hand.ts';
import type { WeaverPlan } from './planDocument.ts';

export type Mismatch =
  | { readonly kind: 'chart-row'; readonly pass: number; readonly saying: string }
  | {
      readonly kind: 'cell';
      readonly pass: number;
      readonly end: number;
      readonly planned: string;
      readonly woven: string;
    }
  | { readonly kind: 'rows'; readonly block: number; readonly place: number; readonly saying: string };

/** At most this many are listed; one is enough to fail. */
const listed = 50;

/** Holds the cloth against `chart.rows`, and each block's `rows` against the passes the hand made. */
export function mismatches(
  plan: WeaverPlan,
  cloth: Cloth,
  woven: ReadonlyMap<number, readonly WovenPass[]>,
): readonly Mismatch[] {
  const found: Mismatch[] = [];
  const { ends, passes, rows } = plan.chart;
  if (rows.length !== passes) {
    found.push({ kind: 'chart-row', pass: rows.length, saying: `${rows.length} rows for ${passes} passes` });
  }
  rows.forEach((runs, pass) => {
    let end = 0;
    for (const [yarn, count] of runs) {
      for (const stop = end + count; end < stop; end += 1) {
        if (end >= ends || pass >= passes) break;
        const made = cloth.yarnAt(end, pass);
        if (made !== yarn) found.push({ kind: 'cell', pass, end, planned: String(yarn), woven: String(made) });
      }
    }
    const total = runs.reduce((sum, run) => sum + run[1], 0);
    if (total !== ends) found.push({ kind: 'chart-row', pass, saying: `${total} cells for ${ends} ends` });
  });
  for (const block of plan.blocks) {
    const made = woven.get(block.order) ?? [];
    if (made.length !== block.rows.length) {
      const saying = `${block.rows.length} rows are listed, ${made.length} were woven`;
      found.push({ kind: 'rows', block: block.order, place: made.length, saying });
    }
    block.rows.forEach((row, place) => {
      const hand = made[place];
      if (hand === undefined || (hand.pass === row.pass && hand.from === row.from && hand.to === row.to)) return;
      const saying = `listed ${row.pass}: ${row.from} to ${row.to}, woven ${hand.pass}: ${hand.from} to ${hand.to}`;
      found.push({ kind: 'rows', block: block.order, place, saying });
    });
  }
  return found.slice(0, listed);
}
