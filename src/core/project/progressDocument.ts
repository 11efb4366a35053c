import { z } from 'zod';
import type { Progress } from '../model/progress.ts';
import type { DocumentKind } from './document.ts';

const progressFields = z.strictObject({
  passesDone: z.number().int().nonnegative(),
  planFingerprint: z.string().max(200),
  finished: z.array(z.string().max(40)).max(100),
  at: z.string().max(40),
});

/** The body of `progress.json`, version 3. */
export const progressSchema = progressFields as unknown as z.ZodType<Progress, Progress>;

const keptBefore = z.looseObject({ at: z.string() });

/** `progress.json`: where the weaver is at the loom. */
export const progressDocument: DocumentKind<Progress> = {
  format: 'plumbweft-progress',
  version: 3,
  migrations: [
    {
      from: 1,
      // Version 1 counted passes inside one block, which says nothing without the plan it was counted in: the count
      // starts at the foot again, and the weaver says where she is.
      name: 'passes are counted over the whole piece',
      migrate: (body) => ({ passesDone: 0, planFingerprint: '', at: keptBefore.parse(body).at }),
    },
    {
      from: 2,
      name: 'steps of finishing are ticked',
      migrate: (body) => ({ ...z.looseObject({}).parse(body), finished: [] }),
    },
  ],
  body: progressSchema,
  called: 'progress',
};
