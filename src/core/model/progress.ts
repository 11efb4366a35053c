/** Where the weaver is at the loom. Kept apart from the piece because it is saved at every turn. */
export interface Progress {
  /** Blocks finished, by their place in the order of work, 0-based. */
  readonly blocksDone: readonly number[];
  readonly currentBlock: number | null;
  /** Passes done in the current block (two to a turn). */
  readonly passesDone: number;
  /** Fingerprint of the plan the counts belong to: a changed plan asks before it goes on. */
  readonly planFingerprint: string;
  /** ISO 8601 instant of the last turn. */
  readonly at: string;
}
