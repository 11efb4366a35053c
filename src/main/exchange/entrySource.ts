import type { Outcome } from '../../core/model/outcome.ts';

/** One named thing in a zip or a folder that is brought in. */
export interface IncomingEntry {
  /** As the source says it, `/` between parts; nothing is trusted yet. */
  readonly name: string;
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  /** Bytes as declared; reading gives an error when there are more. */
  readonly size: number;
  /** CRC-32 as declared; null where the source has none. */
  readonly crc: number | null;
  open(): Promise<AsyncIterable<Uint8Array>>;
}

export type ImportTag =
  | 'zip-unreadable'
  | 'not-a-piece'
  | 'unsafe-entry'
  | 'double-entry'
  | 'too-many-entries'
  | 'too-big'
  | 'damaged-entry';

/** A zip or a folder to bring a piece in from. */
export interface EntrySource {
  /** Each entry once; a problem ends it. */
  entries(): AsyncIterable<Outcome<IncomingEntry, ImportTag>>;
  close(): void;
}

/** What a piece may be at most when it is brought in. */
export const importLimits = {
  entries: 60_000,
  documentBytes: 64 * 1024 * 1024,
  /** Of all documents together: they are the part that packs small and unpacks large. */
  documentsBytes: 4 * 1024 * 1024 * 1024,
  photoBytes: 96 * 1024 * 1024,
  wholeBytes: 200 * 1024 * 1024 * 1024,
  nameLength: 400,
} as const;
