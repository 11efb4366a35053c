import { type BothUnits, inBothUnits } from '../model/bothUnits.ts';
import type { Reason, ReasonCode } from '../model/check.ts';

/** Why something couldn't be read off a photograph, as a check keeps it. */
export interface Refusal extends Reason {
  /** For a log or a report to a maintainer. */
  readonly detail?: string;
}

/** What was looked for in a photograph, or why it wasn't found there. */
export type Sought<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Refusal };

/** The same, singling out the figure of the plan that is to be looked at. */
export const lookAt = (figure: NonNullable<Reason['figure']>, { problem }: ReturnType<typeof refusal>) => ({
  ok: false as const,
  problem: { ...problem, figure },
});

/** @param message a sentence, in both units where it tells a length. */
export const refusal = (
  code: ReasonCode,
  message: string | BothUnits,
  remedy: string,
  detail?: string,
): { readonly ok: false; readonly problem: Refusal } => {
  const reason = { code, message: typeof message === 'string' ? inBothUnits(() => message) : message, remedy };
  return { ok: false, problem: detail === undefined ? reason : { ...reason, detail } };
};
