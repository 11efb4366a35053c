import { z } from 'zod';
import type { Progress } from '../model/progress.ts';
import type { DocumentKind } from './document.ts';

const progressFields = z.strictObject({
  passesDone: z.number().int().nonnegative(),
  planFingerprint: z.string().max(200),
  at: z.string().max(40),
});

/** `progress.json`, version 1. */
export const progressSchema = progressFields as unknown as z.ZodType<Progress, Progress>;

/** `progress.json`: where the weaver is at the loom. */
export const progressDocument: DocumentKind<Progress> = {
  format: 'plumbweft-progress',
  version: 1,
  migrations: [],
  body: progressSchema,
  called: 'progress',
};
