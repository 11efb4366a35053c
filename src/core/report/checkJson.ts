import type { LoomReading } from '../model/check.ts';

/** A check as it is published: flat, snake case, millimetres in the cloth frame. */
export interface CheckJson {
  readonly photo: string;
  readonly status: LoomReading['status'];
  readonly reasons: readonly { readonly code: string; readonly message: string; readonly remedy: string }[];
  readonly reference: {
    readonly method: string;
    readonly mm_per_px: number;
    readonly residual_mm: number;
    readonly lens_k1: number;
  } | null;
  readonly ends: readonly {
    readonly index: number;
    readonly seen: boolean;
    readonly why: string | null;
    readonly notch_x_mm: number | null;
    readonly fell_mm: number | null;
    readonly fell_sigma_mm: number | null;
    readonly x_at_fell_mm: number | null;
    readonly x_sigma_mm: number | null;
  }[];
  readonly ends_counted: number | null;
  readonly selvedge: readonly {
    readonly y_mm: number;
    readonly left_mm: number | null;
    readonly left_sigma_mm: number | null;
    readonly right_mm: number | null;
    readonly right_sigma_mm: number | null;
  }[];
  readonly pass_mm: { readonly value: number; readonly sigma: number } | null;
  readonly colour_rows: readonly (readonly number[])[] | null;
  readonly flags: readonly {
    readonly kind: string;
    readonly side: string | null;
    readonly y_mm: number | null;
    readonly deviation_mm: number;
    readonly sigma_mm: number;
    readonly message: string;
    readonly advice: string;
  }[];
  readonly timing_ms: Readonly<Record<string, number>>;
}

/** Thousandths of a millimetre are kept: more would be noise. */
const round = (value: number, places = 3): number => Number(value.toFixed(places));
const orNull = (value: number | undefined): number | null => (value === undefined ? null : round(value));

/** @param photo the photograph's name as it was given. */
export function checkJson(photo: string, reading: LoomReading): CheckJson {
  const { reference } = reading;
  return {
    photo,
    status: reading.status,
    reasons: reading.reasons.map(({ code, message, remedy }) => ({ code, message: message.mm, remedy })),
    reference: reference && {
      method: reference.method,
      mm_per_px: round(reference.mmPerPx, 6),
      residual_mm: round(reference.residualMm, 4),
      lens_k1: round(reference.lensK1, 6),
    },
    ends: reading.ends.map((end) => ({
      index: end.index,
      seen: end.seen,
      why: end.why,
      notch_x_mm: orNull(end.notchX?.value),
      fell_mm: orNull(end.fell?.value),
      fell_sigma_mm: orNull(end.fell?.sigma),
      x_at_fell_mm: orNull(end.xAtFell?.value),
      x_sigma_mm: orNull(end.xAtFell?.sigma),
    })),
    ends_counted: reading.endsCounted,
    selvedge: reading.selvedge.map((row) => ({
      y_mm: row.y,
      left_mm: orNull(row.left?.value),
      left_sigma_mm: orNull(row.left?.sigma),
      right_mm: orNull(row.right?.value),
      right_sigma_mm: orNull(row.right?.sigma),
    })),
    pass_mm: reading.pass && { value: round(reading.pass.value, 4), sigma: round(reading.pass.sigma, 4) },
    colour_rows: reading.colours?.rows ?? null,
    flags: reading.flags.map((flag) => ({
      kind: flag.kind,
      side: flag.side,
      y_mm: flag.yMm,
      deviation_mm: round(flag.deviationMm),
      sigma_mm: round(flag.sigmaMm),
      message: flag.message.mm,
      advice: flag.advice,
    })),
    timing_ms: reading.timingMs,
  };
}
