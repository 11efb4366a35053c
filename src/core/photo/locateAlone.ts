import type { Stage } from '../model/stage.ts';
import { AGAIN, asPlanned } from './asPlanned.ts';
import { cutOff } from './cutOff.ts';
import type { Expected } from './expected.ts';
import { type FirstLook, firstLooks } from './firstLook.ts';
import { FAIR_LOOK, type FramePicture, frameLooks, framePicture } from './frameLooks.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { otherOpening } from './otherOpening.ts';
import type { Photo } from './raster.ts';
import { type Look, refinedLook } from './refinedLook.ts';
import { FRAME_CLEAR, FRAME_SEEN } from './refineOnNotches.ts';
import { refusal, type Sought } from './refusal.ts';
import { type StringBands, stringBands } from './stringBands.ts';
import { stringsSure } from './stringsSure.ts';

/** Of the frame's eight edges as many must be there beyond chance for a last look. */
const FAINT_FRAME = 4;

/** The loom as the picture alone shows it, or why not. */
export interface SoughtAlone {
  readonly found: Sought<LocatedLoom>;
  /** Looks for what the plan has otherwise than the picture, which takes about as long as the search itself. */
  readonly explained: () => Sought<LocatedLoom>;
}

/** Finds the loom by what the picture shows of it; marks then only take part in the fit. */
export function locateAlone(view: View, options: LocateOptions): SoughtAlone {
  const { photo, expected, prior, mirrored } = view;
  const seen = framePicture(photo, prior, mirrored);
  let strings: StringBands | undefined;
  // Many pictures are placed without.
  const bands = (): StringBands => {
    strings ??= stringBands(photo, expected);
    return strings;
  };
  const best = bestAsPlanned(view, looksInTurn(view, seen, bands, options), options);
  const { support } = best;
  const other = (clearly: boolean): Sought<LocatedLoom> | null => {
    options.onStage?.('opening', 3, 4);
    return otherOpening(view, seen, bands(), options, clearly);
  };
  // What fits the plan by its strings alone, or by an odd camera, gives way to another opening that is clear.
  const hardly = best.found.ok && (support < FRAME_SEEN || oddCamera(best.found.value, view, options));
  const found = hardly ? (other(true) ?? best.found) : best.found;
  const explained = (): Sought<LocatedLoom> => {
    if (best.found.ok || found.ok || found.problem.code === 'wrong-pitch') return found;
    // Where the frame is as planned beyond doubt, no other opening is.
    const planned = support > FRAME_CLEAR && found.problem.code !== 'no-loom';
    const opening = planned ? null : other(false);
    if (opening) return opening;
    if (found.problem.code !== 'no-loom') return found;
    return cutLoom(photo, expected) ?? found;
  };
  return { found, explained };
}

/** Sigmas of the usual focal length from which on another opening, seen by a usual camera, is the likelier. */
const ODD_FOCAL = 3;
/** A focal length this near to one that is known, as a share, is that one. */
const KNOWN_FOCAL = 0.15;

/**
 * Whether a loom fits its plan by an odd camera only: from aslant, an opening higher or lower than planned looks like the
 * planned one seen through a much longer or shorter lens.
 */
function oddCamera({ pose }: LocatedLoom, { photo, prior }: View, { lens, trace }: LocateOptions): boolean {
  const logFocal = Math.log(pose.focal);
  const off = Math.abs(logFocal - prior.logFocal) / prior.logFocalSigma;
  if (off < ODD_FOCAL) return false;
  trace?.(`a focal length ${off.toFixed(1)} sigma from the usual`);
  return !lens || Math.abs(Math.log(lens.focal * Math.hypot(photo.width, photo.height)) - logFocal) > KNOWN_FOCAL;
}

/** A look with its share of the frame's edges, and the loom it shows or why it doesn't. */
interface Judged {
  readonly support: number;
  readonly found: Sought<LocatedLoom>;
}

/** The best of some looks, refined, as a located loom. */
function bestAsPlanned(view: View, looks: Iterable<Look>, options: LocateOptions): Judged {
  let best: Judged | null = null;
  for (const look of looks) {
    const refined = refinedLook(view, look, options);
    const support = refined.frameSupport;
    if (best && support < best.support + (best.found.ok ? 0.05 : -0.1)) continue;
    const found = asPlanned(view, refined, options);
    options.trace?.(
      `frame ${support.toFixed(2)} ${found.ok ? 'measured' : `${found.problem.code} ${found.problem.detail ?? ''}`}`,
    );
    // A frame as planned with strings that aren't: no other look will say better.
    if (!found.ok && found.problem.code === 'wrong-pitch') return { support, found };
    if (best && !found.ok && (best.found.ok || support < best.support)) continue;
    best = { support, found };
    // A frame that is clear, or strings that stand in nearly all notches of both bars: no other look will say better.
    if (found.ok && (support > FRAME_CLEAR || (stringsSure(refined) && support > FRAME_SEEN))) break;
  }
  return best ?? { support: 0, found: refusal('no-loom', 'No loom is seen in the picture.', AGAIN) };
}

/** Says so where strings are seen that the picture's border cuts. */
function cutLoom(photo: Photo, expected: Expected): Sought<LocatedLoom> | null {
  const cut = cutOff(photo, expected);
  if (!cut) return null;
  return cut.along.length > 0
    ? refusal('bar-missing', 'Lines like strings run out of the picture: a bar of the loom isn’t in it.', AGAIN)
    : refusal('loom-cut-off', 'The picture’s edge cuts through what may be strings.', AGAIN);
}

/**
 * First cameras, the likeliest first: by the frame's own edges, then, only if they are asked for, by the combs of strings
 * at both bars, for frames that hardly stand out from the table.
 */
function* looksInTurn(
  view: View,
  seen: FramePicture,
  bands: () => StringBands,
  { trace, onStage }: LocateOptions,
): Generator<Look> {
  const { photo, expected, prior, mirrored } = view;
  const stage = (name: Stage, done: number) => onStage?.(name, done, 4);
  stage('frame', 1);
  const frames = frameLooks(seen, expected, 3);
  for (const look of frames) {
    trace?.(
      `frame look ${look.score.toFixed(2)}: edges ${look.edges.toFixed(2)} wood ${look.wood.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)} base ${look.base.toFixed(0)}/${look.baseOther.toFixed(0)}`,
    );
    if (look.score < Math.max(frames[0]!.score - 2, FAIR_LOOK)) break;
    yield { camera: look.camera, fromFrame: true };
  }
  stage('strings', 2);
  const looks = firstLooks(photo, bands(), expected, prior, mirrored);
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
