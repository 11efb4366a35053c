import type { Advice } from './frameQuality.ts';

/**
 * How long the live picture has been still and clear. It is counted in time and in pictures, never in looks at a fixed
 * beat: a slow computer or a slow camera gets there as well, only with fewer pictures.
 */
export interface Steadiness {
  /** When the run of good pictures began, ms; null when the last one was not good. */
  readonly since: number | null;
  /** Good pictures in the run. */
  readonly pictures: number;
}

export const unsteady: Steadiness = { since: null, pictures: 0 };

/** Long enough that a hand passing by, or a camera that is still focusing, has shown itself. */
const STEADY_MS = 1_200;
/** The first picture after a pause may be old; two that follow it and agree are not. */
const STEADY_PICTURES = 3;

/** @param at when the picture was looked at, ms of any clock that only goes forward. */
export const afterPicture = (before: Steadiness, advice: Advice, at: number): Steadiness =>
  advice === 'good' ? { since: before.since ?? at, pictures: before.pictures + 1 } : unsteady;

/** Whether the picture may be taken by itself now. */
export const isSteady = ({ since, pictures }: Steadiness, now: number): boolean =>
  since !== null && pictures >= STEADY_PICTURES && now - since >= STEADY_MS;
