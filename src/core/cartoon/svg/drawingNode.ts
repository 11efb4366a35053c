/** One element of a drawing as read: local name in lower case, attributes by local name. */
export interface DrawingNode {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly DrawingNode[];
  /** Text directly inside, kept only for style rules. */
  readonly text: string;
}

/** What was left out of a drawing, each told to the weaver once. */
export type LeftOut =
  | 'script'
  | 'entity'
  | 'image'
  | 'foreign'
  | 'text'
  | 'reference'
  | 'animation'
  | 'gradient'
  | 'pattern'
  | 'clip'
  | 'numbers'
  | 'page'
  | 'reuse'
  | 'thin-line'
  | 'small'
  | 'unfinished-path'
  | 'style';
