import { cornersMarked, type Marks } from '../model/marks.ts';
import { success } from '../model/outcome.ts';
import type { PhotoPoint } from '../model/units.ts';
import { asPlanned } from './asPlanned.ts';
import { type Camera, cameraToVector } from './camera.ts';
import { usualWood } from './coarseCamera.ts';
import { finishedLoom, givenParts, poseReading, STEEPEST_VIEW, seenFrame, slantOf } from './finishedLoom.ts';
import { fuseReferences, type Shown } from './fuseReferences.ts';
import { stringThings } from './knownThings.ts';
import { locateAlone } from './locateAlone.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom, LoomPose, StringTrack } from './loomPose.ts';
import { heldLevel, roughlyAt } from './markEvidence.ts';
import { markedReferences } from './markedReferences.ts';
import { firstByMarks } from './marksCamera.ts';
import { ownStrings } from './ownStrings.ts';
import { cameraFromPoints } from './pointsCamera.ts';
import { FITTED, fitPose, type PoseFit } from './poseFit.ts';
import { clothCorners, MOST_UNSURE, unsureAt } from './poseUnsure.ts';
import { FRAME_SEEN } from './refineOnNotches.ts';
import { type RefinedPose, refinePose, scaleOf } from './refinePose.ts';
import { refusal, type Sought } from './refusal.ts';

/** Lens bend that corners alone leave open: they can't tell it. */
const MOST_BEND = 0.02;

/** Where only corners speak, they and the hand's habit of holding a camera level. */
const cornersOnly = ({ prior }: View) => ({ ...prior, k1Sigma: Math.min(prior.k1Sigma, MOST_BEND) });

/**
 * Marked corners give the first camera; frame and strings then say the rest where they are seen, and everything is
 * fitted together. Where the picture shows neither, the marks alone must be enough.
 */
export function locateByMarks(seen: View, marks: Marks, options: LocateOptions): Sought<LocatedLoom> {
  const first = firstByMarks(marks, seen.expected, seen.prior, seen.photo, seen.mirrored);
  if (!first.ok) return first;
  const view: View = { ...seen, mirrored: first.value.mirrored ?? seen.mirrored };
  const { photo, picture, factor, expected, prior, mirrored } = view;
  const four = cornersMarked(marks) === 4;
  options.onStage?.('frame', 1, 4);
  const byMarks = fitToMarks(view, first.value.camera, marks);
  const start = four ? first.value.camera : byMarks.camera;
  const refined = refinePose(photo, picture, factor, start, expected, prior, mirrored, true, options.trace);
  options.trace?.(`by marks: frame ${refined.frameSupport.toFixed(2)}`);
  options.onStage?.('ends', 3, 4);
  // Two or three corners bring the camera near, no more: what is seen from there is judged as if found without them.
  const near = !four
    ? asPlanned(view, refined, options)
    : refined.frameSupport >= FRAME_SEEN
      ? finishedLoom(view, refined, { ...seenFrame(refined), taken: [] }, options)
      : null;
  if (settled(near)) return near;
  // Marks that are out bring the camera beside the loom: what the picture shows without them is then the better start.
  let alone = !four || contradicted(near) ? locateAlone(view, options).found : null;
  if (alone?.ok) return alone;
  if (near?.ok || (four && contradicted(near))) return near;
  const onStrings = withStrings(view, byMarks, marks, options);
  if (settled(onStrings)) return onStrings;
  if (contradicted(onStrings)) {
    alone ??= locateAlone(view, options).found;
    return alone.ok ? alone : onStrings;
  }
  // The picture doesn't confirm the plan's strings and frame: the marks alone tie it to millimetres.
  return marksAlone(view, marks, byMarks, refined, options);
}

type Found = Sought<LocatedLoom> | null;

/** Found, and nothing that was marked speaks against it. */
const settled = (found: Found): found is Extract<Found, { ok: true }> =>
  found?.ok === true && found.value.remarks.length === 0;

/** Something that was marked speaks against what was found. */
const contradicted = (found: Found): found is NonNullable<Found> =>
  found !== null && (found.ok ? found.value.remarks.length > 0 : found.problem.code === 'references-disagree');

const evidenceOf = (view: View, camera: Camera, marks: Marks) => {
  const { photo, expected, mirrored } = view;
  const mmPerPx = 1 / scaleOf(camera, photo, mirrored, expected);
  return markedReferences(marks, { size: photo, mirrored, expected, mmPerPx }).map(({ evidence }) => evidence);
};

/** What holds a camera that corners alone leave loose. */
const held = (camera: Camera) => [heldLevel, roughlyAt(camera)];

function fitToMarks(view: View, start: Camera, marks: Marks): PoseFit {
  const { photo, mirrored } = view;
  const evidence = [...held(start), ...evidenceOf(view, start, marks)];
  return fitPose([], start, usualWood, cornersOnly(view), photo, mirrored, evidence);
}

/** Strings and marks together, where no frame is seen; null when the strings can't be known as the plan's. */
function withStrings(view: View, byMarks: PoseFit, marks: Marks, options: LocateOptions): Sought<LocatedLoom> | null {
  const { photo, expected, prior, mirrored } = view;
  let fit = byMarks;
  let shown: Shown | null = null;
  let followed: Pick<RefinedPose, 'ends' | 'upperUsed' | 'lowerUsed' | 'stringsIn'> | null = null;
  for (let round = 0; round < 3; round++) {
    const { ends, upper, lower } = ownStrings(view, fit);
    options.trace?.(`strings with marks: upper ${upper.size} lower ${lower.size}`);
    if (upper.size === 0 && lower.size === 0) return null;
    const things = stringThings(ends, expected, lower, upper);
    const taken = held(fit.camera);
    const evidence = [...taken, ...evidenceOf(view, fit.camera, marks)];
    fit = fitPose(things, fit.camera, fit.wood, prior, photo, mirrored, evidence);
    shown = { fit, things, taken, witnesses: 1 };
    followed = { ends, upperUsed: upper.size > 0, lowerUsed: lower.size > 0, stringsIn: photo };
  }
  const unsure = unsureAt(view, fit, clothCorners(view.expected));
  options.trace?.(`strings with marks: unsure by ${unsure.x.toFixed(2)}, ${unsure.y.toFixed(2)} mm`);
  if (Math.max(unsure.x, unsure.y) > MOST_UNSURE) return null;
  return finishedLoom(view, followed!, { ...shown!, wood: false }, options);
}

function marksAlone(
  view: View,
  marks: Marks,
  byMarks: PoseFit,
  refined: RefinedPose,
  options: LocateOptions,
): Sought<LocatedLoom> {
  const { photo, expected, prior, mirrored } = view;
  const tracks = refined.ends.map(
    (end): StringTrack => ({ end: end.end, why: 'the strings were not told apart', notchX: null, bare: [] }),
  );
  const located = (pose: LoomPose, tied: LocatedLoom['tied'], remarks: LocatedLoom['remarks']) =>
    success({ pose, tied, endsCounted: 0, tracks, remarks });
  const plainCorners = marks.lengths.length === 0 && marks.card === null && !options.lens && !options.earlier;
  if (cornersMarked(marks) === 4 && plainCorners) {
    const placed = cameraFromPoints(marks.corners as readonly PhotoPoint[], expected, prior, photo);
    if (!placed.ok) return placed;
    const { camera, covariance, residualMm } = placed.value;
    const parts = ['four clicked corners'];
    const tied = { camera, covariance, size: 9, residualMm, method: 'points' as const, parts, lens: null };
    return located(poseReading(view, tied, mirrored), null, []);
  }
  const shown: Shown = { fit: byMarks, things: [], taken: held(byMarks.camera), witnesses: 0 };
  const given = { marks, lens: options.lens ?? null, earlier: options.earlier ?? null };
  const fused = fuseReferences(shown, given, { ...view, prior: cornersOnly(view) });
  if (!fused.ok) return fused;
  const { fit, used, remarks } = fused.value;
  const unsure = unsureAt(view, fit, clothCorners(view.expected));
  const most = Math.max(unsure.x, unsure.y);
  options.trace?.(`marks alone: unsure by ${most.toFixed(2)} mm`);
  if (cornersMarked(marks) < 4 && (most > MOST_UNSURE || slantOf(fit.camera) > STEEPEST_VIEW)) {
    return refusal(
      'points-do-not-fit',
      'Neither frame nor strings are seen well enough there, and the marks alone don’t say how the camera was held.',
      'Mark the other inner corners too, or take the picture again with the whole frame in view.',
      `unsure by ${most.toFixed(2)} mm`,
    );
  }
  const outMm = Math.hypot(...used.map(({ evidence }) => evidence.outMm([...cameraToVector(fit.camera), ...fit.wood])));
  const { camera, covariance } = fit;
  const residualMm = outMm / Math.sqrt(Math.max(1, used.length));
  const parts = givenParts(fused.value);
  const tied = { camera, covariance, size: FITTED, residualMm, method: 'points' as const, parts, lens: null };
  return located(poseReading(view, tied, mirrored), fit, remarks);
}
