import { z } from 'zod';

/**
 * The parts of a printed plan that a weaver reads. Written from the documented fields alone; ends and passes count
 * from 0. Fields a weaver has no use for are let through unread.
 */
const whole = z.number().int();
const yarnName = z.union([whole, z.string()]);
const steps = z.array(z.object({ turns: z.number(), ends: whole })).min(1);

const weaverBlock = z.object({
  order: whole,
  name: z.string(),
  yarn: yarnName,
  start: z.object({ end: whole, to: whole.optional(), side: z.enum(['left', 'right']), over: z.boolean() }),
  rows: z.array(z.object({ pass: whole, from: whole, to: whole })),
  left: steps,
  right: steps,
  continues: whole.nullish(),
  words: z.union([z.string().transform((sentence) => [sentence]), z.array(z.string())]),
});

const sequencePair = z.union([
  z.object({ block: whole, row: whole }),
  z.tuple([whole, whole]).transform(([block, row]) => ({ block, row })),
]);

export const weaverPlanSchema = z.object({
  chart: z.object({
    ends: whole.positive(),
    passes: whole.positive(),
    rows: z.array(z.array(z.tuple([yarnName.nullable(), whole.positive()]))),
  }),
  parity: z.union([z.literal(0), z.literal(1)]),
  blocks: z.array(weaverBlock),
  sequence: z.array(sequencePair).nullish(),
});

export type WeaverPlan = z.infer<typeof weaverPlanSchema>;
export type WeaverBlock = WeaverPlan['blocks'][number];
export type WeaverStep = WeaverBlock['left'][number];
export type YarnName = z.infer<typeof yarnName>;
