import { median, quantile } from '../photo/statistics.ts';
import type { Truth } from './accuracyTruth.ts';
import type { CheckJson } from './checkJson.ts';

/** One figure against its truth. */
export interface Compared {
  readonly error: number;
  readonly sigma: number;
  /** Truth lies at least 2 mm from where the plan has it. */
  readonly offPlan: boolean;
}

/** A kind of figure over one photograph: what was compared and how many truths there were. */
export interface Tally {
  readonly compared: readonly Compared[];
  readonly wanted: number;
  readonly wantedOffPlan: number;
}

export interface PhotoScore {
  readonly name: string;
  readonly status: CheckJson['status'];
  readonly endsCounted: number | null;
  readonly endsTrue: number;
  readonly selvedge: Tally;
  readonly fell: Tally;
  readonly ends: Tally;
  /** Share by which the pass height is off; null without a reading. */
  readonly passError: number | null;
  readonly passes: number;
  readonly cells: { readonly right: number; readonly seen: number; readonly woven: number } | null;
  /** Draw-in or spreading of 3 mm or more that no flag names, and flags where the cloth is within 1 mm. */
  readonly flagsMissed: readonly string[];
  readonly flagsFalse: readonly string[];
  readonly wrong: boolean;
}

/** How far off plan a truth must lie to count among the hard ones, mm. */
const OFF_PLAN = 2;

/** Scores one check against its truth. Nothing here is seen by the program that measures. */
export function scorePhoto(name: string, check: CheckJson, truth: Truth): PhotoScore {
  const selvedge = selvedgeTally(check, truth);
  const fell = fellTally(check, truth);
  const wrong = [...selvedge.compared, ...fell.compared].some(
    ({ error, sigma }) => Math.abs(error) > 4 || (Math.abs(error) > 1.5 && Math.abs(error) > 3 * sigma),
  );
  const passes = truth.colour_rows?.length ?? 0;
  return {
    name,
    status: check.status,
    endsCounted: check.ends_counted,
    endsTrue: truth.ends.filter((end) => !end.missing).length,
    selvedge,
    fell,
    ends: endTally(check, truth),
    passError: check.pass_mm && truth.pass_mm_mean ? check.pass_mm.value / truth.pass_mm_mean - 1 : null,
    passes,
    cells: cellTally(check, truth),
    ...flagTally(check, truth),
    wrong,
  };
}

const SIDES = ['left', 'right'] as const;

/** How far out each side's truth lies against its own lowest 10 mm: what draw-in and spreading are judged on. */
function outwardOfBase(truth: Truth, side: (typeof SIDES)[number]): { y: number; out: number }[] {
  const sign = side === 'left' ? -1 : 1;
  const rows = truth.selvedge.flatMap((row) => {
    const x = row[`${side}_mm`];
    return x === null ? [] : [{ y: row.y_mm, out: sign * x }];
  });
  const low = rows.filter((row) => row.y <= 10);
  if (low.length === 0) return [];
  const base = median(low.map((row) => row.out));
  return rows.map((row) => ({ y: row.y, out: row.out - base }));
}

function selvedgeTally(check: CheckJson, truth: Truth): Tally {
  const compared: Compared[] = [];
  let wanted = 0;
  let wantedOffPlan = 0;
  for (const side of SIDES) {
    const outward = new Map(outwardOfBase(truth, side).map((row) => [row.y, row.out]));
    const read = check.selvedge.flatMap((row) => {
      const x = row[`${side}_mm`];
      const sigma = row[`${side}_sigma_mm`];
      return x === null || sigma === null ? [] : [{ y: row.y_mm, x, sigma }];
    });
    for (const row of truth.selvedge) {
      const x = row[`${side}_mm`];
      if (x === null) continue;
      const offPlan = Math.abs(outward.get(row.y_mm) ?? 0) >= OFF_PLAN;
      wanted++;
      if (offPlan) wantedOffPlan++;
      const found = readAt(read, row.y_mm);
      if (found) compared.push({ error: found.x - x, sigma: found.sigma, offPlan });
    }
  }
  return { compared, wanted, wantedOffPlan };
}

/** The reading at a height, between the readings above and below where neither is farther than 2 mm. */
function readAt(
  rows: readonly { y: number; x: number; sigma: number }[],
  y: number,
): { x: number; sigma: number } | null {
  let below: (typeof rows)[number] | null = null;
  let above: (typeof rows)[number] | null = null;
  for (const row of rows) {
    if (row.y <= y + 1e-9 && y - row.y <= 2.001 && (!below || row.y > below.y)) below = row;
    if (row.y >= y - 1e-9 && row.y - y <= 2.001 && (!above || row.y < above.y)) above = row;
  }
  if (!below || !above) return null;
  const share = above.y > below.y ? (y - below.y) / (above.y - below.y) : 0;
  return { x: below.x + share * (above.x - below.x), sigma: below.sigma + share * (above.sigma - below.sigma) };
}

function fellTally(check: CheckJson, truth: Truth): Tally {
  const compared: Compared[] = [];
  let wanted = 0;
  let wantedOffPlan = 0;
  // A flat fell is easily guessed: the hard ends are those away from the middle height.
  const heights = truth.ends.flatMap((end) => (end.fell_mm === null ? [] : [end.fell_mm]));
  const middle = heights.length > 0 ? median(heights) : 0;
  for (const end of truth.ends) {
    if (end.fell_mm === null) continue;
    const offPlan = Math.abs(end.fell_mm - middle) >= OFF_PLAN;
    wanted++;
    if (offPlan) wantedOffPlan++;
    const read = check.ends.find((other) => other.index === end.index);
    if (!read || read.fell_mm === null) continue;
    compared.push({ error: read.fell_mm - end.fell_mm, sigma: read.fell_sigma_mm ?? Number.NaN, offPlan });
  }
  return { compared, wanted, wantedOffPlan };
}

function endTally(check: CheckJson, truth: Truth): Tally {
  const compared: Compared[] = [];
  let wanted = 0;
  let wantedOffPlan = 0;
  for (const end of truth.ends) {
    if (end.fell_mm === null || end.x_at_fell_mm === null) continue;
    const offPlan = Math.abs(end.x_at_fell_mm - end.notch_x_mm) >= OFF_PLAN;
    wanted++;
    if (offPlan) wantedOffPlan++;
    const read = check.ends.find((other) => other.index === end.index);
    if (!read || read.x_at_fell_mm === null) continue;
    compared.push({ error: read.x_at_fell_mm - end.x_at_fell_mm, sigma: read.x_sigma_mm ?? Number.NaN, offPlan });
  }
  return { compared, wanted, wantedOffPlan };
}

function cellTally(check: CheckJson, truth: Truth): PhotoScore['cells'] {
  if (!truth.colour_rows || !check.colour_rows) return null;
  let right = 0;
  let seen = 0;
  let woven = 0;
  truth.colour_rows.forEach((row, pass) => {
    row.forEach((yarn, end) => {
      if (yarn < 0) return;
      woven++;
      const read = check.colour_rows?.[pass]?.[end] ?? -1;
      if (read < 0) return;
      seen++;
      if (read === yarn) right++;
    });
  });
  return { right, seen, woven };
}

function flagTally(check: CheckJson, truth: Truth): { flagsMissed: string[]; flagsFalse: string[] } {
  const flagsMissed: string[] = [];
  const flagsFalse: string[] = [];
  for (const side of SIDES) {
    const out = outwardOfBase(truth, side).map((row) => row.out);
    if (out.length === 0) continue;
    const kinds = [
      { kind: 'draw-in', most: -Math.min(...out) },
      { kind: 'spreading', most: Math.max(...out) },
    ];
    for (const { kind, most } of kinds) {
      const flagged = check.flags.some((flag) => flag.kind === kind && flag.side === side);
      if (most >= 3 && !flagged) flagsMissed.push(`${side} ${kind}`);
      if (most <= 1 && flagged) flagsFalse.push(`${side} ${kind}`);
    }
  }
  return { flagsMissed, flagsFalse };
}

/** Middle and 95th percentile of |error|, middle sigma, shares. Null where nothing was compared. */
export interface TallySummary {
  readonly count: number;
  readonly middle: number | null;
  readonly high: number | null;
  readonly sigma: number | null;
  readonly reported: number | null;
  readonly within: number | null;
}

export function summarise(tallies: readonly Tally[], onlyOffPlan = false): TallySummary {
  const compared = tallies.flatMap((tally) => tally.compared.filter((one) => !onlyOffPlan || one.offPlan));
  const wanted = tallies.reduce((sum, tally) => sum + (onlyOffPlan ? tally.wantedOffPlan : tally.wanted), 0);
  const sizes = compared.map((one) => Math.abs(one.error));
  const some = compared.length > 0;
  return {
    count: compared.length,
    middle: some ? median(sizes) : null,
    high: some ? quantile(sizes, 0.95) : null,
    sigma: some ? median(compared.map((one) => one.sigma)) : null,
    reported: wanted > 0 ? compared.length / wanted : null,
    within: some ? compared.filter((one) => Math.abs(one.error) <= 2 * one.sigma).length / compared.length : null,
  };
}
