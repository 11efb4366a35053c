import { inBothUnits } from '../model/bothUnits.ts';
import type { FittedLens } from '../model/check.ts';
import type { Marks } from '../model/marks.ts';
import { success } from '../model/outcome.ts';
import { type Agreed, agreeing, disagreementWith, type Reference } from './agreeingMarks.ts';
import type { EarlierReference } from './earlierReference.ts';
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
  readonly earlier: EarlierReference | null;
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
  /** When the earlier check was made that took part. */
  readonly earlierUsed: string | null;
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
  const marked = given.marks === null ? [] : markedReferences(given.marks, picture);
  const references = given.earlier === null ? marked : [...marked, earlierCheck(given.earlier)];
  const fitTo = (evidence: readonly PoseEvidence[]) =>
    fitPose(things, fit.camera, fit.wood, prior, photo, mirrored, evidence);
  const lens = given.lens === null ? null : lensEvidence(given.lens, photo);
  const lensUsed = lens !== null && disagreementWith(fitTo(taken), lens) <= 1;
  if (references.length === 0 && !lensUsed) return success({ fit, used: [], remarks: [], lensUsed, earlierUsed: null });
  const believed = lensUsed ? [...taken, lens] : taken;
  const agreed = agreeing(references, (evidence) => fitTo([...believed, ...evidence]), witnesses);
  if (!agreed.ok) return agreed;
  const took = agreed.value.used.some(({ kind }) => kind === 'earlier');
  return success({ ...agreed.value, lensUsed, earlierUsed: took ? given.earlier!.when : null });
}

const earlierCheck = ({ when, evidence }: EarlierReference): Reference => ({
  kind: 'earlier',
  name: inBothUnits(() => `The check of ${when.slice(0, 10)}`),
  evidence,
});
