import type { z } from 'zod';
import { type Answer, type CallName, hostCalls } from '../../core/contract/hostApi.ts';
import { failure, type Outcome, type Problem } from '../../core/model/outcome.ts';

const isProblem = (value: unknown): value is Problem =>
  typeof value === 'object' &&
  value !== null &&
  'tag' in value &&
  typeof value.tag === 'string' &&
  'sentence' in value &&
  typeof value.sentence === 'string' &&
  'remedy' in value &&
  typeof value.remedy === 'string';

const notAsAgreed = (name: CallName): Outcome<never> =>
  failure(
    'not-as-agreed',
    'The program answered in a way this page does not understand.',
    'Load the page again; if it happens again, copy the report and send it to us.',
    name,
  );

/** Checks an answer against the contract before the page trusts it. */
export function readAnswer<Name extends CallName>(
  name: Name,
  answered: unknown,
  bytes: Uint8Array | null,
): Outcome<Answer<Name>> {
  if (typeof answered !== 'object' || answered === null || !('ok' in answered)) return notAsAgreed(name);
  if (answered.ok === false && 'problem' in answered && isProblem(answered.problem)) {
    return { ok: false, problem: answered.problem };
  }
  if (answered.ok !== true || !('value' in answered)) return notAsAgreed(name);
  const parsed = (hostCalls[name].result as z.ZodType).safeParse(answered.value);
  if (!parsed.success) return notAsAgreed(name);
  return { ok: true, value: { result: parsed.data as Answer<Name>['result'], bytes } };
}
