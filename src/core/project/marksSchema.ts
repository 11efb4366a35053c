import { z } from 'zod';
import type { Marks } from '../model/marks.ts';

const point = z.strictObject({ x: z.number(), y: z.number() });

/** What was marked in a photograph, as it is handed over and kept. */
export const marksSchema = z.strictObject({
  corners: z.array(point.nullable()).length(4),
  lengths: z.array(z.strictObject({ from: point, to: point, length: z.number().positive().max(10_000) })).max(6),
  card: z.array(point).length(4).nullable(),
}) as unknown as z.ZodType<Marks, Marks>;
