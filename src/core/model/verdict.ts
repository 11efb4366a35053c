/** A judgement with its reasons: what was found, why, and what would mend it. */
export interface Verdict<Tag extends string = string> {
  readonly verdict: Tag;
  /** What was found, in one sentence a neighbour could say. */
  readonly sentence: string;
  /** The figures behind it. */
  readonly why: string;
  /** What to do; null when all is well. */
  readonly remedy: string | null;
}
