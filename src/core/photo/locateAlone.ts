import { inBothUnits } from '../model/bothUnits.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import type { Camera } from './camera.ts';
import type { CameraPrior } from './coarseCamera.ts';
import { cameraOtherWayUp } from './coarsePose.ts';
import { cutOff } from './cutOff.ts';
import type { Expected } from './expected.ts';
import { finishedLoom, seenFrame } from './finishedLoom.ts';
import { type FirstLook, firstLooks, mapOf } from './firstLook.ts';
import { frameLooks } from './frameLooks.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { oddSide } from './oddSide.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, firstLookReduction, reducedCoordinate, reducePhoto } from './reduce.ts';
import { FRAME_CLEAR, FRAME_SEEN, refineOnNotches } from './refineOnNotches.ts';
import type { RefinedPose } from './refinePose.ts';
import { refusal, type Sought } from './refusal.ts';
import { stringPitch } from './stringPitch.ts';
import { stringsSure } from './stringsSure.ts';
import { baseEvidence, evidenceElsewhere } from './uprightness.ts';

/** A frame look below this is tried after the combs: edges, wood, strings and upright together seldom reach it by chance. */
const FAIR_LOOK = 8.5;
/** Of the frame's eight edges as many must be there beyond chance for a last look. */
const FAINT_FRAME = 4;
/** The same where strings stand in nearly all notches of both bars. */
const FRAME_GLIMPSED = 0.45;

const remedy = {
  again: 'Take the picture again from straight above, the whole frame in view, or click the four inner corners.',
};

/** Finds the loom by what the picture shows of it; marks then only take part in the fit. */
export function locateAlone(view: View, options: LocateOptions): Sought<LocatedLoom> {
  const { photo, picture, factor, expected, prior, mirrored } = view;
  const stage = (name: string, done: number) => options.onStage?.(name, done, 4);
  let best: { support: number; found: Sought<LocatedLoom> } | null = null;
  for (const { camera, fromFrame } of looksInTurn(
    photo,
    picture,
    factor,
    expected,
    prior,
    mirrored,
    stage,
    options.trace,
  )) {
    const refine = (from: Camera): RefinedPose =>
      refineOnNotches(photo, picture, factor, from, expected, prior, mirrored, fromFrame, options.trace);
    const base = (of: Camera): number => baseEvidence(picture, reducedMap(of, photo, mirrored, factor), expected);
    let refined = refine(camera);
    const other = cameraOtherWayUp(refined.fit.camera, expected);
    // The frame looks the same either way up; the cloth begins at the bottom.
    if (refined.frameSupport >= FRAME_SEEN && base(other) > 1.4 * base(refined.fit.camera) + BASE_STEPS) {
      options.trace?.('the cloth begins at the other bar');
      refined = refine(other);
    }
    const support = refined.frameSupport;
    if (best && support < best.support + (best.found.ok ? 0.05 : -0.1)) continue;
    const found = asPlanned(view, refined, options);
    options.trace?.(
      `frame ${support.toFixed(2)} ${found.ok ? 'measured' : `${found.problem.code} ${found.problem.detail ?? ''}`}`,
    );
    // A frame as planned with strings that aren't: no other look will say better.
    if (!found.ok && found.problem.code === 'wrong-pitch') return found;
    if (best && !found.ok && (best.found.ok || support < best.support)) continue;
    best = { support, found };
    // A frame that is clear, or strings that stand in nearly all notches of both bars: no other look will say better.
    if (found.ok && (support > FRAME_CLEAR || (stringsSure(refined) && support > FRAME_SEEN))) break;
  }
  const found = best?.found ?? refusal('no-loom', 'No loom is seen in the picture.', remedy.again);
  if (found.ok || found.problem.code !== 'no-loom') return found;
  return cutLoom(photo, expected) ?? found;
}

/** A refined look as a located loom, if its frame is really there and nothing in the picture contradicts the plan. */
export function asPlanned(view: View, refined: RefinedPose, options: LocateOptions): Sought<LocatedLoom> {
  const { photo, picture, factor, expected, mirrored } = view;
  const support = refined.frameSupport;
  const toSmall = reducedMap(refined.fit.camera, photo, mirrored, factor);
  const sure = stringsSure(refined);
  const strings = refined.upperUsed || refined.lowerUsed;
  const doubtful = (why: string) => refusal('no-loom', NO_FRAME, remedy.again, why);
  if (support < (sure ? FRAME_GLIMPSED : strings ? FRAME_SEEN : FRAME_CLEAR)) {
    return doubtful(`frame ${support.toFixed(2)}`);
  }
  if (support < FRAME_CLEAR && !sure && baseAstray(picture, toSmall, expected)) {
    return doubtful('the cloth begins elsewhere');
  }
  if (!strings && !barsEnd(refined)) return doubtful('no bar ends, and no string stands in a notch');
  if (!sure && loneOuterEdge(refined)) return doubtful('one bar is seen by its outer edge alone');
  const against = sure ? null : disagreement(photo, expected, refined, mirrored);
  if (against) return against;
  if (oddSide(picture, toSmall, expected) !== null) return doubtful('table where wood should be');
  return finishedLoom(view, refined, { ...seenFrame(refined), taken: [] }, options);
}

/** Least share of a bar's inner edge for the bar to end there. */
const BAR_ENDS = 0.3;

/** Whether wood ends at a bar's inner edge: a door with slats has the outline of a loom, but is wood all over. */
function barsEnd({ frame }: RefinedPose): boolean {
  return frame.edges.some(
    ({ side, kind, support }) => kind === 'inner' && (side === 'bottom' || side === 'top') && support >= BAR_ENDS,
  );
}

/** With less than this share of its inner edge and of its strings seen, a bar is known by its outer edge alone. */
const INNER_SEEN = 0.12;
const STRINGS_SEEN = 0.6;

/** Whether one bar has no more than its outer edge, which on a dark table may be where its shadow ends. */
function loneOuterEdge({ frame, upperShare, lowerShare }: RefinedPose): boolean {
  const lone = (bar: 'bottom' | 'top', share: number): boolean =>
    share < STRINGS_SEEN &&
    frame.edges.some(({ side, kind, support }) => side === bar && kind === 'inner' && support < INNER_SEEN);
  return lone('bottom', lowerShare) || lone('top', upperShare);
}

/** Says so where strings are seen that the picture's border cuts. */
function cutLoom(photo: Photo, expected: Expected): Sought<LocatedLoom> | null {
  const cut = cutOff(photo, expected);
  if (!cut) return null;
  return cut.along.length > 0
    ? refusal('bar-missing', 'Lines like strings run out of the picture: a bar of the loom isn’t in it.', remedy.again)
    : refusal('loom-cut-off', 'The picture’s edge cuts through what may be strings.', remedy.again);
}

/** Colour change by which one beginning of the cloth must outdo another, grey levels. */
const BASE_STEPS = 30;

/** Whether the cloth plainly begins elsewhere than a look has it: then the look took other lines for the frame. */
function baseAstray(picture: ColourRaster, toSmall: ReturnType<typeof reducedMap>, expected: Expected): boolean {
  return evidenceElsewhere(picture, toSmall, expected) > 3 * baseEvidence(picture, toSmall, expected) + BASE_STEPS;
}

/** Loom mm to pixels of the reduced picture. */
function reducedMap(camera: Camera, photo: Photo, mirrored: boolean, factor: number) {
  const map = mapOf(camera, photo, mirrored);
  return (x: number, y: number, z = 0) => {
    const seen = map(x, y, z);
    return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
  };
}

/** Least share of one side, by its inner or its outer edge, for that side to stand where the plan has it. */
const SIDE_SEEN = 0.4;
/** Share of the frame's edges from which on the frame is surer than the plan. */
const FRAME_SURE = 0.95;
const NO_FRAME = 'Strings may be there, but no frame of the size in the plan is seen around them.';
/** Shares of a pitch by which strings may seem nearer or wider than planned before the plan is doubted. */
const PITCH_OFF = 0.03;

/** What of the frame and the strings contradicts the plan, in words; null when nothing does. */
function disagreement(
  photo: Photo,
  expected: Expected,
  refined: RefinedPose,
  mirrored: boolean,
): Sought<LocatedLoom> | null {
  const map = mapOf(refined.fit.camera, photo, mirrored);
  for (const side of ['bottom', 'top', 'left', 'right'] as const) {
    const seen = Math.max(...refined.frame.edges.flatMap((edge) => (edge.side === side ? [edge.support] : [])));
    if (seen >= SIDE_SEEN) continue;
    const bar = side === 'bottom' || side === 'top';
    return refusal(
      'references-disagree',
      inBothUnits((units) => {
        const [width, height] = [expected.openingWidth, expected.openingHeight].map((one) => lengthInWords(one, units));
        return `The ${side} ${bar ? 'bar' : 'rail'} is not where an opening of ${width} × ${height} has it.`;
      }),
      "Measure the opening's width and height again and correct them in the plan, or take the picture with the whole frame in view.",
    );
  }
  if (refined.upperShare > 0.7) return null;
  const pitch = stringPitch(photo, map, expected);
  const off = pitch === null ? 0 : Math.abs(pitch / expected.pitch - 1);
  if (pitch === null || off < PITCH_OFF) return null;
  // A frame not seen all round may itself be a little out; then it is the look that is doubted, not the plan.
  if (refined.frameSupport < FRAME_SURE || off < 2 * PITCH_OFF) {
    return refusal('no-loom', NO_FRAME, remedy.again, `strings ${pitch.toFixed(2)} mm apart`);
  }
  return refusal(
    'wrong-pitch',
    inBothUnits((units) => {
      const [seen, planned] = [pitch, expected.pitch].map((one) => lengthInWords(one, units, 'pass-height'));
      return `The strings stand ${seen} apart; the plan's notches are ${planned} apart.`;
    }),
    'Measure the notch pitch over ten notches and correct it in the plan, then check again.',
  );
}

/**
 * First cameras, the likeliest first: by the frame's own edges, then, only if they are asked for, by the combs of strings
 * at both bars, for frames that hardly stand out from the table.
 */
function* looksInTurn(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  stage: (name: string, done: number) => void,
  trace?: (line: string) => void,
): Generator<{ camera: Camera; fromFrame: boolean }> {
  stage('frame', 1);
  const frames = frameLooks(photo, expected, prior, mirrored, 3);
  for (const look of frames) {
    trace?.(
      `frame look ${look.score.toFixed(2)}: edges ${look.edges.toFixed(2)} wood ${look.wood.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)} base ${look.base.toFixed(0)}/${look.baseOther.toFixed(0)}`,
    );
    if (look.score < Math.max(frames[0]!.score - 2, FAIR_LOOK)) break;
    yield { camera: look.camera, fromFrame: true };
  }
  stage('strings', 2);
  const quick = firstLookReduction(photo, expected.openingHeight + 2 * expected.bar, expected.pitch);
  const small = quick === factor ? picture : reducePhoto(photo, quick);
  const looks = firstLooks(photo, small, quick, expected, prior, mirrored);
  for (const look of looks.slice(0, 3)) {
    trace?.(describeLook(look));
    if (look.score < looks[0]!.score - 3) break;
    yield { camera: look.camera, fromFrame: false };
  }
  const last = frames[0];
  if (last && last.score < FAIR_LOOK && last.edges > FAINT_FRAME) yield { camera: last.camera, fromFrame: true };
}

const describeLook = (look: FirstLook): string =>
  `${look.coarse.view.polarity} ${((look.coarse.view.angle * 180) / Math.PI).toFixed(0)}° ${look.bottomIsLower} score ${look.score.toFixed(2)} bars ${look.bars.toFixed(2)} rails ${look.rails.toFixed(2)} misfit ${look.misfit.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)} base ${look.base.toFixed(0)}/${look.baseMirrored.toFixed(0)} combs ${look.coarse.upperComb.points.length} ${look.coarse.lowerComb.points.length}`;
