import type { z } from 'zod';
import type { Answer, CallName, HostCalls } from '../../core/contract/hostApi.ts';
import type { Outcome } from '../../core/model/outcome.ts';

/** A handler gets parameters that were checked against the contract. */
export type Handler<Name extends CallName> = (
  params: z.output<HostCalls[Name]['params']>,
  bytes: Uint8Array | null,
) => Promise<Outcome<Answer<Name>>>;

export type Handlers<Names extends CallName = CallName> = { readonly [Name in Names]: Handler<Name> };

/** An answer without bytes. */
export const answer = <Result>(
  result: Result,
  bytes: Uint8Array | null = null,
): { readonly ok: true; readonly value: { readonly result: Result; readonly bytes: Uint8Array | null } } => ({
  ok: true,
  value: { result, bytes },
});
