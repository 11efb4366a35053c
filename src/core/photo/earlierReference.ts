import type { FittedLens } from '../model/check.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import { disagreementWith } from './agreeingMarks.ts';
import { type Camera, cameraToVector } from './camera.ts';
import { type CameraPrior, usualCamera, usualWood } from './coarseCamera.ts';
import { placesEvidence, reducedEvidence, type SharedPlace } from './earlierEvidence.ts';
import type { EarlierLoom, LookAlike } from './earlierLoom.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { lensEvidence } from './knownLens.ts';
import { cameraByLookAlikes } from './lookAlikes.ts';
import { type CellZone, loomCells } from './loomCells.ts';
import { toLoom } from './loomPose.ts';
import type { MarkEvidence } from './markEvidence.ts';
import { FITTED, fitPose, type PoseFit, poseOf } from './poseFit.ts';
import { clothCorners, MOST_UNSURE, unsureAt } from './poseUnsure.ts';
import type { Photo } from './raster.ts';
import { sharedPlaces } from './sharedPlaces.ts';

/** What an earlier check says of a new picture's pose. */
export interface EarlierReference {
  /** ISO 8601 instant by which the weaver knows the check. */
  readonly when: string;
  /** The camera it gives by itself. */
  readonly camera: Camera;
  readonly evidence: MarkEvidence;
  /** How many cells of wood and of cloth were found again. */
  readonly wood: number;
  readonly cloth: number;
}

export type UnlikeTag = 'not-the-same';

/** Fewest cells of wood and of cloth that must be found where one camera has them. */
const FEWEST_WOOD = 12;
const FEWEST_CLOTH = 6;
/** At least on so many sides of the frame, with so many cells each. */
const SIDES = 2;
const ON_A_SIDE = 3;
/** Of all that was told apart from its surroundings so large a share must lie where the camera has it. */
const MOST_AGREE = 0.6;
/** Spread of what is left over, in what the matching says of itself: beyond it something else was matched. */
const MOST_SPREAD = 2.5;
/** The same size of picture is mostly the same camera: a first guess, from which the pictures lead away if it isn't. */
const SAME_FOCAL = 0.1;
const SAME_BEND = 0.01;

const isCloth = (zone: CellZone): boolean => zone === 'cloth';
const unlike = (why: string) =>
  failure<UnlikeTag>(
    'not-the-same',
    'The earlier check’s photograph doesn’t show this loom and this cloth beyond doubt.',
    'Take the picture again with the whole frame in view.',
    why,
  );

/**
 * Refers a new picture to an earlier one of the same loom and piece. The wood alone must say where the camera was, on
 * two sides at least and to fractions of a millimetre, and the cloth must then lie where the wood has it: ribs and turns
 * that look alike can't lead one aside, and another loom, another piece or a mirror image fails one of the two.
 * @param alike what looks alike in both, most of it false.
 * @param lens what other pictures by the same camera showed of it, where they did: it helps to judge, but isn't in the evidence.
 */
export function referToEarlier(
  photo: Photo,
  earlier: EarlierLoom,
  alike: readonly LookAlike[],
  expected: Expected,
  mirrored: boolean,
  lens: FittedLens | null,
  trace?: (line: string) => void,
): Outcome<EarlierReference, UnlikeTag> {
  const prior = usualCamera(photo);
  const first = cameraByLookAlikes(alike, expected, guessed(prior, photo, earlier), photo, mirrored);
  trace?.(`earlier check: ${alike.length} look alike, ${first?.agreeing.length ?? 0} agree`);
  if (!first) return unlike('no camera brings look-alikes together');
  const cells = loomCells(expected, earlier.fells);
  const look = sharedPlaces(photo, earlier, cells, first.camera, expected, prior, mirrored, trace);
  if (!look) return unlike('too few places are told');
  const count = (of: (zone: CellZone) => boolean) => look.agreeing.filter(({ zone }) => of(zone)).length;
  const wood = count((zone) => !isCloth(zone));
  const cloth = count(isCloth);
  const sides = (['bottom bar', 'top bar', 'left rail', 'right rail'] as const).filter(
    (side) => count((zone) => zone === side) >= ON_A_SIDE,
  ).length;
  const share = look.places.length / look.told;
  trace?.(
    `earlier check: wood ${wood} on ${sides} sides, cloth ${cloth}, share ${share.toFixed(2)}, chi ${look.chi.toFixed(2)}`,
  );
  if (wood < FEWEST_WOOD || sides < SIDES || cloth < FEWEST_CLOTH)
    return unlike(`wood ${wood}/${sides} cloth ${cloth}`);
  if (share < MOST_AGREE || look.chi > MOST_SPREAD)
    return unlike(`share ${share.toFixed(2)} chi ${look.chi.toFixed(2)}`);
  const scale = Math.max(1, look.chi);
  const evidenceOf = (places: readonly SharedPlace[], of: EarlierLoom) =>
    placesEvidence(places, of, expected, photo, mirrored, look.fit.camera, scale);
  const reduced = (places: readonly SharedPlace[], of: EarlierLoom, at: Float64Array) => {
    const evidence = evidenceOf(places, of);
    return evidence && reducedEvidence(evidence, at, spansOf(prior));
  };
  const fitTo = (places: readonly SharedPlace[], of: EarlierLoom): PoseFit | null => {
    const evidence = evidenceOf(places, of);
    const known = lens === null ? [] : [lensEvidence(lens, photo)];
    return evidence && fitPose([], look.fit.camera, usualWood, prior, photo, mirrored, [evidence, ...known]);
  };
  const woodPlaces = look.places.filter(({ zone }) => !isCloth(zone));
  const clothPlaces = look.places.filter(({ zone }) => isCloth(zone));
  const byWood = fitTo(woodPlaces, earlier);
  // How well the wood tells where the cloth is, whatever the millimetres of the earlier pose are worth.
  const told = fitTo(woodPlaces, { ...earlier, covariance: new Float64Array(FITTED * FITTED) });
  const all = fitTo(look.places, earlier);
  if (!byWood || !told || !all) return unlike('nothing to fit');
  const view = { photo, expected, mirrored };
  const found = look.agreeing.filter(({ zone }) => isCloth(zone)).map(({ x, y }) => [x, y] as const);
  const unsure = unsureAt(view, told, found);
  trace?.(`earlier check: wood alone unsure by ${unsure.x.toFixed(2)}, ${unsure.y.toFixed(2)} mm`);
  if (!(Math.max(unsure.x, unsure.y) < MOST_UNSURE)) {
    return unlike(`wood alone unsure by ${unsure.x.toFixed(2)}, ${unsure.y.toFixed(2)}`);
  }
  const clothSays = reduced(clothPlaces, earlier, parametersOf(byWood));
  if (!clothSays) return unlike('no cloth to compare');
  const apart = disagreementWith(byWood, clothSays);
  trace?.(`earlier check: cloth against wood ${apart.toFixed(2)}`);
  if (!(apart <= 1)) return unlike(`cloth against wood ${apart.toFixed(2)}`);
  const evidence = reduced(look.places, earlier, parametersOf(all));
  if (!evidence) return unlike('nothing to fit');
  return success({
    when: earlier.when,
    camera: all.camera,
    evidence: { ...evidence, outMm: (parameters) => largestMove(parameters, all.camera, view) },
    wood,
    cloth,
  });
}

const parametersOf = ({ camera, wood }: PoseFit): Float64Array => Float64Array.of(...cameraToVector(camera), ...wood);

function guessed(prior: CameraPrior, photo: Photo, { photo: before, camera }: EarlierLoom): CameraPrior {
  if (photo.width !== before.width || photo.height !== before.height) return prior;
  return { ...prior, logFocal: camera.logFocal, logFocalSigma: SAME_FOCAL, k1: camera.k1, k1Sigma: SAME_BEND };
}

/** How far each camera parameter may range: turns in radians, places in mm, then logarithms and the lens. */
const spansOf = (prior: CameraPrior): number[] => [
  1,
  1,
  1,
  300,
  300,
  1,
  prior.logFocalSigma,
  prior.k1Sigma,
  prior.k2Sigma,
];

/** Most that two cameras put a corner of the cloth apart, mm. */
function largestMove(
  parameters: ArrayLike<number>,
  camera: Camera,
  { photo, expected, mirrored }: { photo: Photo; expected: Expected; mirrored: boolean },
): number {
  const pose = poseOf(parameters, photo, mirrored);
  const map = mapOf(camera, photo, mirrored);
  return Math.max(
    ...clothCorners(expected).map(([x, y]) => {
      const seen = map(x, y);
      const there = toLoom(pose, seen.x, seen.y);
      return Math.hypot(there.x - x, there.y - y);
    }),
  );
}
