/** Something that went wrong, as a value: a tag for code, a sentence for the weaver, and what to do about it. */
export interface Problem<Tag extends string = string> {
  readonly tag: Tag;
  /** What was seen, in one plain sentence. */
  readonly sentence: string;
  /** What to do, in one plain sentence. */
  readonly remedy: string;
  /** For a log or a report to a maintainer; never a private path. */
  readonly detail?: string;
}

export type Outcome<Value, Tag extends string = string> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem<Tag> };

export const success = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });

export const failure = <Tag extends string>(
  tag: Tag,
  sentence: string,
  remedy: string,
  detail?: string,
): { readonly ok: false; readonly problem: Problem<Tag> } => ({
  ok: false,
  problem: detail === undefined ? { tag, sentence, remedy } : { tag, sentence, remedy, detail },
});
