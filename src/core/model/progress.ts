/** Where the weaver is at the loom. Kept apart from the piece because it is saved at every turn. */
export interface Progress {
  /** Passes done so far, counted through the whole order of work. */
  readonly passesDone: number;
  /** Fingerprint of the plan the count belongs to: a changed plan asks before it goes on. */
  readonly planFingerprint: string;
  /** ISO 8601 instant of the last turn. */
  readonly at: string;
}
