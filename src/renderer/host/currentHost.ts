import type { HostApi } from '../../core/contract/hostApi.ts';

let current: HostApi | null = null;

/** Set once, before anything is drawn. */
export const setHost = (host: HostApi): void => {
  current = host;
};

/** The host the whole renderer talks to. */
export const host = (): HostApi => {
  if (current === null) throw new Error('The host is asked for before it is set.');
  return current;
};
