/** Where the weaver is at the loom. Kept apart from the piece because it is saved at every turn. */
export interface Progress {
  /** Passes done so far, counted through the whole order of work. */
  readonly passesDone: number;
  /** Fingerprint of what was woven by the plan: where that has changed since, the weaver is asked before it goes on. */
  readonly planFingerprint: string;
  /** Steps of finishing that are done, by their names. */
  readonly finished: readonly string[];
  /** ISO 8601 instant of the last turn or step. */
  readonly at: string;
}
