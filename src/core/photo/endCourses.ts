import type { ClothFrame } from './clothFrame.ts';
import { OUTSIDE_PICTURE } from './countEnds.ts';
import type { StringTrack } from './loomPose.ts';
import { neighbourSlopes } from './neighbourSlopes.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { median } from './statistics.ts';
import { type StringLook, stringLooks } from './stringLooks.ts';
import { type TrackLine, trackLine } from './trackLine.ts';

/** What a look at a string may be led astray by, all along one track alike, mm at its lower end. */
const ASTRAY = 0.12;
/** How well a string is known to leave its notch, mm. */
const AT_NOTCH = 0.1;
/** A bare string bows by about this much over 100 mm when it bows at all, mm. */
const USUAL_BOW = 0.08;
const ROUNDS = 8;
/** An end that was not followed is looked for where its neighbours say how it leans to this much, mm per mm. */
const UNFOLLOWED = 0.01;
/** So many looks must meet it, half of them within this far of its notch, mm. */
const FEWEST_MET = 12;
const NEAR_NOTCH = 60;

/** Where one end runs above its cloth, and how high it is bare for certain. */
export interface EndCourse {
  readonly track: StringTrack;
  readonly course: TrackLine;
  /** Loom y. */
  readonly bareY: number;
  /** Breadth over which the string's edges rise, mm; null where no edge was met. */
  readonly rise: number | null;
}

/**
 * The course of every end: its own track, the looks that meet it farther down, and the lean of its neighbours, fused.
 * A string runs nearly straight from its notch to the fell, so a track that a stripe or shadow bends is found out.
 */
export function endCourses(
  sampler: LoomSampler,
  frame: ClothFrame,
  tracks: readonly StringTrack[],
): (EndCourse | null)[] {
  const topY = frame.openingHeight;
  const present = tracks.map((track) => track.why === null && track.bare.length >= 2);
  const notchOf = (track: StringTrack): number => frame.centreX + frame.endX(track.end);
  const own = tracks.map((track, i) => {
    const line = present[i] ? trackLine(track.bare) : null;
    if (!line) return { slope: null, sigma: 1 };
    const low = track.bare[0]!.y;
    const length = Math.max(5, topY - low);
    return { slope: (line.x(low) - notchOf(track)) / length, sigma: Math.hypot(ASTRAY, line.sigma(low)) / length };
  });
  const first = neighbourSlopes(own);
  if (!first) return tracks.map(() => null);
  const fitted = (looks: readonly (readonly StringLook[] | null)[], slopes: typeof first): (TrackLine | null)[] =>
    tracks.map((track, i) => {
      const seen = looks[i];
      return seen ? courseThrough(notchOf(track), topY, slopes[i]!, [...seen, ...thinned(track.bare)]) : null;
    });
  const lookAlong = (course: (i: number, y: number) => number, reach: number) =>
    tracks.map((_, i) =>
      present[i] || (tracks[i]!.why !== OUTSIDE_PICTURE && first[i]!.sigma < UNFOLLOWED)
        ? stringLooks(sampler, frame, (y) => course(i, y), topY - 5, frame.baseY + 1, reach)
        : null,
    );
  const straight = (i: number, y: number): number => notchOf(tracks[i]!) + first[i]!.slope * (topY - y);
  const courses = fitted(lookAlong(straight, 0.3 * frame.pitch), first);
  const again = lookAlong((i, y) => courses[i]?.x(y) ?? straight(i, y), 0.16 * frame.pitch);
  const final = fitted(again, first);
  return tracks.map((track, i) => {
    const course = final[i];
    if (!course) return null;
    const rise = again[i]!.length > 0 ? median(again[i]!.map((look) => look.rise)) : null;
    if (present[i]) return { track, course, bareY: track.bare[Math.floor(track.bare.length / 2)]!.y, rise };
    // Nothing was followed, but the looks may meet the string where its neighbours' lean says it is.
    const met = again[i]!.filter((look) => Math.abs(look.x - course.x(look.y)) < 0.3);
    if (met.length < FEWEST_MET || met.filter((look) => look.y > topY - NEAR_NOTCH).length < FEWEST_MET / 2)
      return null;
    return { track, course, bareY: met[Math.floor(met.length / 3)]!.y, rise };
  });
}

/** Where a string was met. */
type Place = Pick<StringLook, 'x' | 'y' | 'sigma'>;

/** About one point in 3 mm: neighbouring looks of a track say nearly the same. */
function thinned(bare: StringTrack['bare']): Place[] {
  const kept: Place[] = [];
  for (const point of bare) {
    const last = kept[kept.length - 1];
    if (!last || point.y - last.y >= 3) kept.push(point);
  }
  return kept;
}

/**
 * x = notch + a + b d + c d², d = distance below the notch line in 100 mm, by least squares that let go of looks that
 * lie far off. All three are held: the notch is where it is, neighbours lean alike, a taut string hardly bows.
 */
function courseThrough(
  notch: number,
  topY: number,
  lean: { readonly slope: number; readonly sigma: number },
  looks: readonly Place[],
): TrackLine {
  const held = [1 / AT_NOTCH ** 2, 1 / Math.hypot(100 * lean.sigma, 0.05) ** 2, 1 / USUAL_BOW ** 2];
  let [a, b, c] = [0, 100 * lean.slope, 0] as [number, number, number];
  let inverse: number[][] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const normal = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? held[i]! : 0)));
    const right = [0, held[1]! * 100 * lean.slope, 0];
    let far = 0;
    for (const look of looks) {
      const d = (topY - look.y) / 100;
      const off = look.x - notch - (a + b * d + c * d * d);
      // A lean that is still wrong grows with the distance: early rounds are patient with it.
      const scale = Math.hypot(look.sigma, 0.08, round < 3 ? 0.3 * d : 0);
      const weight = 1 / (1 + (off / (2 * scale)) ** 2) ** 2 / (look.sigma ** 2 + 0.08 ** 2);
      far = Math.max(far, d);
      const basis = [1, d, d * d];
      for (let i = 0; i < 3; i++) {
        right[i]! += weight * basis[i]! * (look.x - notch);
        for (let j = 0; j < 3; j++) normal[i]![j]! += weight * basis[i]! * basis[j]!;
      }
    }
    inverse = inverseOf3(normal);
    [a, b, c] = inverse.map((row) => row.reduce((sum, value, k) => sum + value * right[k]!, 0)) as [
      number,
      number,
      number,
    ];
  }
  return {
    x: (y) => {
      const d = (topY - y) / 100;
      return notch + a + b * d + c * d * d;
    },
    sigma: (y) => {
      const d = (topY - y) / 100;
      const basis = [1, d, d * d];
      let variance = 0;
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += basis[i]! * inverse[i]![j]! * basis[j]!;
      return Math.hypot(0.04, 1.5 * Math.sqrt(Math.max(0, variance)));
    },
  };
}

function inverseOf3(m: readonly (readonly number[])[]): number[][] {
  const [p, q, r] = m as readonly [readonly number[], readonly number[], readonly number[]];
  const cofactor = (u: readonly number[], v: readonly number[], i: number, j: number) => u[i]! * v[j]! - u[j]! * v[i]!;
  const adjugate = [
    [cofactor(q, r, 1, 2), -cofactor(p, r, 1, 2), cofactor(p, q, 1, 2)],
    [-cofactor(q, r, 0, 2), cofactor(p, r, 0, 2), -cofactor(p, q, 0, 2)],
    [cofactor(q, r, 0, 1), -cofactor(p, r, 0, 1), cofactor(p, q, 0, 1)],
  ];
  const determinant = p[0]! * adjugate[0]![0]! + p[1]! * adjugate[1]![0]! + p[2]! * adjugate[2]![0]!;
  return adjugate.map((row) => row.map((value) => value / determinant));
}
