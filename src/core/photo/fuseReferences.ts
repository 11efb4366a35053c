import type { FittedLens } from '../model/check.ts';
import type { Marks } from '../model/marks.ts';
import { success } from '../model/outcome.ts';
import { type Agreed, agreeing, disagreementWith } from './agreeingMarks.ts';
import { lensEvidence } from './knownLens.ts';
import type { View } from './locateOptions.ts';
import { markedReferences } from './markedReferences.ts';
import type { PoseEvidence } from './poseEvidence.ts';
import { fitPose, type PoseFit, type StraightThing } from './poseFit.ts';
import { scaleOf } from './refinePose.ts';
import type { Sought } from './refusal.ts';

/** What there is beside the picture itself. */
export interface Given {
  readonly marks: Marks | null;
  /** What earlier pictures by the same camera showed of its lens. */
  readonly lens: FittedLens | null;
}

/** What the picture shows of itself, and a fit of that alone to start from. */
export interface Shown {
  readonly fit: PoseFit;
  readonly things: readonly StraightThing[];
  /** What else every fit takes in without being asked whether it agrees. */
  readonly taken: readonly PoseEvidence[];
  /** Independent things in it that bear on the scale: opening, notches. */
  readonly witnesses: number;
}

export interface Fused extends Agreed {
  readonly lensUsed: boolean;
}

/**
 * One weighted least squares over what the picture shows, what was marked in it and what is known of the lens. A lens
 * that this picture contradicts is another one (another zoom, another camera of the same name) and says nothing.
 */
export function fuseReferences(
  shown: Shown,
  given: Given,
  { photo, expected, prior, mirrored }: Pick<View, 'photo' | 'expected' | 'prior' | 'mirrored'>,
): Sought<Fused> {
  const { fit, things, taken, witnesses } = shown;
  const mmPerPx = 1 / scaleOf(fit.camera, photo, mirrored, expected);
  const picture = { size: photo, mirrored, expected, mmPerPx };
  const references = given.marks === null ? [] : markedReferences(given.marks, picture);
  const fitTo = (evidence: readonly PoseEvidence[]) =>
    fitPose(things, fit.camera, fit.wood, prior, photo, mirrored, evidence);
  const lens = given.lens === null ? null : lensEvidence(given.lens, photo);
  const lensUsed = lens !== null && disagreementWith(fitTo(taken), lens) <= 1;
  if (references.length === 0 && !lensUsed) return success({ fit, used: [], remarks: [], lensUsed });
  const believed = lensUsed ? [...taken, lens] : taken;
  const agreed = agreeing(references, (evidence) => fitTo([...believed, ...evidence]), witnesses);
  return agreed.ok ? success({ ...agreed.value, lensUsed }) : agreed;
}
