import type { LoomReading } from '../../core/model/check.ts';
import type { Marks } from '../../core/model/marks.ts';
import type { PhotoMetadata } from '../decode/photoMetadata.ts';

/** A measurement that isn't kept yet. */
export interface Draft {
  readonly key: string;
  readonly hash: string;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly marks: Marks | null;
  readonly metadata: PhotoMetadata;
  readonly reading: LoomReading;
}

const DRAFTS_HELD = 6;

/** The last few measurements, until they are kept or pushed out by newer ones. */
export class Drafts {
  readonly #held = new Map<string, Draft>();

  add(name: string, draft: Draft): void {
    this.#held.delete(name);
    this.#held.set(name, draft);
    for (const oldest of this.#held.keys()) {
      if (this.#held.size <= DRAFTS_HELD) break;
      this.#held.delete(oldest);
    }
  }

  get(name: string): Draft | null {
    return this.#held.get(name) ?? null;
  }

  /** A photograph that was measured but isn't in the piece yet. */
  withHash(key: string, hash: string): Draft | null {
    for (const draft of this.#held.values()) if (draft.hash === hash && draft.key === key) return draft;
    return null;
  }

  remove(name: string): void {
    this.#held.delete(name);
  }
}
