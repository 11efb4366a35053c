import { z } from 'zod';

const finite = z.number();
const maybe = finite.nullable();

/** What is known of a rendered photograph; other fields are let by. Millimetres, cloth frame. */
const truthSchema = z.object({
  selvedge: z.array(z.object({ y_mm: finite, left_mm: maybe, right_mm: maybe })),
  ends: z.array(
    z.object({
      index: z.number().int(),
      notch_x_mm: finite,
      fell_mm: maybe,
      x_at_fell_mm: maybe,
      missing: z.boolean().optional(),
    }),
  ),
  pass_mm_mean: finite.nullish(),
  colour_rows: z.array(z.array(z.number().int())).nullish(),
});

export type Truth = z.infer<typeof truthSchema>;

/** @returns null when the value is not a truth. */
export function parseTruth(value: unknown): Truth | null {
  const parsed = truthSchema.safeParse(value);
  return parsed.success ? parsed.data : null;
}
