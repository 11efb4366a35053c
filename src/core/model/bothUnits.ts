import type { LengthUnits } from './lengthWords.ts';

/**
 * What is said once and read in millimetres or in inches, as the weaver chooses that day: both are worded from the
 * figure as it was measured, so switching never rounds what was rounded before.
 */
export type BothUnits = Readonly<Record<LengthUnits, string>>;

export const inBothUnits = (say: (units: LengthUnits) => string): BothUnits => ({ mm: say('mm'), in: say('in') });
