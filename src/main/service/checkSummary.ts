import type { CheckSummary } from '../../core/contract/hostApi.ts';
import type { CheckRecord, LoomReading } from '../../core/model/check.ts';

const middle = (values: readonly number[]): number | null => {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

/** The newest stretch of cloth, mm below the topmost row with both selvedges: what the width of a check speaks of. */
const NEWEST_MM = 20;

/** Height of the fell: the middle one of the ends that were seen, with the middle one of their sigmas. */
function fell(reading: LoomReading) {
  const seen = reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell]));
  return { value: middle(seen.map((one) => one.value)), sigma: middle(seen.map((one) => one.sigma)) };
}

/** Width just under the fell: the middle one of the rows' widths, each row's sigma from both its edges. */
function width(reading: LoomReading) {
  const rows = reading.selvedge.flatMap((row) =>
    row.left === null || row.right === null
      ? []
      : [
          {
            y: row.y,
            value: row.right.value - row.left.value,
            sigma: Math.hypot(row.left.sigma, row.right.sigma),
          },
        ],
  );
  const top = Math.max(...rows.map((row) => row.y));
  const newest = rows.filter((row) => row.y >= top - NEWEST_MM);
  return { value: middle(newest.map((row) => row.value)), sigma: middle(newest.map((row) => row.sigma)) };
}

/** What the Record lists of a check. Flags put aside are left out. */
export function summariseCheck(record: CheckRecord): CheckSummary {
  const { reading } = record;
  const fellOf = fell(reading);
  const widthOf = width(reading);
  const aside = new Set(record.dismissed.map((one) => one.flag));
  return {
    id: record.id,
    kept: record.kept,
    taken: record.taken,
    status: reading.status,
    photoHash: record.photo.hash,
    rendered: record.photo.rendered,
    fellMm: fellOf.value,
    fellSigmaMm: fellOf.sigma,
    widthMm: widthOf.value,
    widthSigmaMm: widthOf.sigma,
    passMm: reading.pass?.value ?? null,
    passSigmaMm: reading.pass?.sigma ?? null,
    flags: reading.flags.filter((_, index) => !aside.has(index)).map((flag) => flag.message),
  };
}
