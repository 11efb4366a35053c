/**
 * How much of a drawing is read. A drawing from elsewhere may be broken or made to do harm, so everything that grows
 * with it is counted, and counting alone bounds time and memory.
 */
export const drawingLimits = {
  /** Characters of text. */
  characters: 8_000_000,
  elements: 60_000,
  depth: 256,
  /** Document entities met and left out. */
  entities: 1_000,
  /** Elements drawn, counting each time a reused one is drawn again. */
  visits: 120_000,
  /** Characters of attributes looked at, counting each time a reused element is drawn again. */
  attributeCharacters: 16_000_000,
  /** Characters of style sheets. */
  styleCharacters: 500_000,
  /** Reused elements inside reused elements. */
  reuseDepth: 8,
  /** Path commands over all areas, before anything is left out. */
  commands: 150_000,
  /** Style rules. */
  rules: 2_000,
  /** Areas kept as shapes; past this the smallest are left out. */
  shapes: 500,
  /** Points round the outlines of all drawn lines. */
  linePoints: 400_000,
} as const;

/** Thrown inside the reader when a limit is met; never leaves it. */
export class LimitMet extends Error {
  constructor(readonly what: keyof typeof drawingLimits) {
    super(what);
  }
}
