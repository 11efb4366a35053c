/** What the command line ends with; documented in the README. */
export const exitCodes = {
  done: 0,
  /** Not understood: a word, option or file that isn't there. */
  wrongUse: 2,
  needsPoints: 3,
  refused: 4,
  /** The piece can't be read or written as asked; the sentence says why. */
  pieceTrouble: 5,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
