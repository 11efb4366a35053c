import type { Outcome } from '../model/outcome.ts';
import type { CallName } from './hostApi.ts';

/** What the preload script hands the page: as little as can be. Everything is checked again on the other side. */
export interface PreloadBridge {
  invoke(
    name: CallName,
    params: unknown,
    bytes: Uint8Array | null,
  ): Promise<Outcome<{ result: unknown; bytes: Uint8Array | null }>>;
  /** @returns a function that stops listening. */
  listen(listener: (event: unknown) => void): () => void;
}

/** Where the page finds it. */
export const BRIDGE_NAME = 'plumbweft';
/** The one channel for questions and the one for events. */
export const CALL_CHANNEL = 'plumbweft:call';
export const EVENT_CHANNEL = 'plumbweft:event';
