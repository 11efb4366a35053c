import { type Camera, cameraFromVector, cameraSteps, cameraToVector, type PictureSize } from './camera.ts';
import { type CameraPrior, plumbCamera } from './coarseCamera.ts';
import type { LookAlike } from './earlierLoom.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { leastSquares } from './leastSquares.ts';

/** How far a look-alike may lie from where a stretch puts it, share of the long side: slant, lens and depth are still left out. */
const TOLERANCE = 0.006;
/** Look-alikes nearer to each other than this say the same thing once, mm. */
const APART = 8;
/** Fewest separate places that one view must bring together. */
const FEWEST = 12;
const TRIES = 10_000;
/** Half a triangle's worth of mm² below which three places say too little of a stretch. */
const LEAST_AREA = 300;
/** How many times longer along than across a view may show things. */
const MOST_SLANTED = 1.25;
/** Shares of the tolerance by which a camera's own look-alikes are taken, round by round. */
const NEARER = [2, 2, 1, 0.5, 0.3] as const;

/** A first camera, and the look-alikes that it explains. */
export interface ByLookAlikes {
  readonly camera: Camera;
  readonly agreeing: readonly LookAlike[];
}

/**
 * Of many look-alikes, most of them false, those that one camera explains, and that camera. First those that one stretch
 * and slant brings together (RANSAC: Fischler & Bolles, CACM 24, 1981), which near each other any view is; then, from the
 * camera they give, all that it sees where they are, nearer and nearer. Places are counted, not look-alikes: twenty on
 * one knot are one.
 * @returns null where no camera explains enough of them.
 */
export function cameraByLookAlikes(
  all: readonly LookAlike[],
  expected: Expected,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
): ByLookAlikes | null {
  if (all.length < FEWEST) return null;
  const tolerance = TOLERANCE * Math.max(size.width, size.height);
  const next = row(all.length * 7919 + 1);
  let best: { agreed: number[]; places: number } | null = null;
  for (let round = 0; round < TRIES; round++) {
    const view = stretched([0, 1, 2].map(() => all[Math.floor(next() * all.length)]!));
    if (!view || !likeALoom(view, mirrored)) continue;
    const agreed = broughtTogether(view, all, tolerance);
    if (agreed.length < FEWEST) continue;
    const places = placesOf(all, agreed);
    if (places > (best?.places ?? FEWEST - 1)) best = { agreed, places };
  }
  if (!best) return null;
  let agreed: readonly number[] = best.agreed;
  const chosen = () => agreed.map((k) => all[k]!);
  let camera = cameraThrough(chosen(), plumbOver(chosen(), expected, prior, size, mirrored), prior, size, mirrored);
  for (const share of NEARER) {
    agreed = nearTo(camera, all, size, mirrored, share * tolerance);
    if (placesOf(all, agreed) < FEWEST) return null;
    camera = cameraThrough(chosen(), camera, prior, size, mirrored);
  }
  return { camera, agreeing: chosen() };
}

/** The camera straight above the loom that comes nearest (similarity by least squares), to start a fit from. */
function plumbOver(
  places: readonly LookAlike[],
  expected: Expected,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
): Camera {
  const mean = (of: (place: LookAlike) => number) => places.reduce((sum, place) => sum + of(place), 0) / places.length;
  const across = (place: LookAlike) => (mirrored ? -place.x : place.x);
  const [mx, my, mu, mv] = [mean(across), mean(({ y }) => -y), mean(({ px }) => px), mean(({ py }) => py)];
  let [along, aside, squares] = [0, 0, 0];
  for (const place of places) {
    const [x, y, u, v] = [across(place) - mx, -place.y - my, place.px - mu, place.py - mv];
    along += x * u + y * v;
    aside += x * v - y * u;
    squares += x * x + y * y;
  }
  const [p, q] = [along / squares, aside / squares];
  const below = -expected.openingHeight / 2;
  const middle = { x: mu + p * -mx - q * (below - my), y: mv + q * -mx + p * (below - my) };
  const camera = plumbCamera(expected, Math.hypot(p, q), Math.atan2(q, p), middle, size, prior);
  return { ...camera, aimX: mirrored ? -camera.aimX : camera.aimX };
}

/** Look-alikes that a camera sees where they are, to so many px. */
function nearTo(
  camera: Camera,
  all: readonly LookAlike[],
  size: PictureSize,
  mirrored: boolean,
  most: number,
): number[] {
  const map = mapOf(camera, size, mirrored);
  return all.flatMap(({ x, y, z, px, py }, k) => {
    const seen = map(x, y, z);
    return Math.hypot(seen.x - px, seen.y - py) < most ? [k] : [];
  });
}

/** How well a look-alike lies where its likeness does, px. */
const LIES = 2;

function cameraThrough(
  places: readonly LookAlike[],
  start: Camera,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
): Camera {
  const residuals = (v: Float64Array): Float64Array => {
    const map = mapOf(cameraFromVector(v), size, mirrored);
    const out = new Float64Array(2 * places.length + 3);
    places.forEach(({ x, y, z, px, py }, k) => {
      const seen = map(x, y, z);
      out[2 * k] = (seen.x - px) / LIES;
      out[2 * k + 1] = (seen.y - py) / LIES;
    });
    out[2 * places.length] = (v[6]! - prior.logFocal) / prior.logFocalSigma;
    out[2 * places.length + 1] = (v[7]! - prior.k1) / prior.k1Sigma;
    out[2 * places.length + 2] = (v[8]! - prior.k2) / prior.k2Sigma;
    return out;
  };
  const fit = leastSquares(cameraToVector(start), residuals, { steps: cameraSteps, rounds: 25, huber: 2 });
  return cameraFromVector(fit.parameters);
}

/** A row of figures between 0 and 1, the same every time: Lehmer's generator. */
function row(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** px = a x + b y + c, py = d x + e y + f. */
type Stretch = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** What carries three loom places to the picture; null where they lie nearly in line. */
function stretched(three: readonly LookAlike[]): Stretch | null {
  const [p, q, r] = three as readonly [LookAlike, LookAlike, LookAlike];
  const [x1, y1, x2, y2] = [q.x - p.x, q.y - p.y, r.x - p.x, r.y - p.y];
  const turning = x1 * y2 - x2 * y1;
  if (Math.abs(turning) < LEAST_AREA) return null;
  const along = (of: (place: LookAlike) => number): readonly [number, number, number] => {
    const [v1, v2] = [of(q) - of(p), of(r) - of(p)];
    const a = (v1 * y2 - v2 * y1) / turning;
    const b = (x1 * v2 - x2 * v1) / turning;
    return [a, b, of(p) - a * p.x - b * p.y];
  };
  return [...along(({ px }) => px), ...along(({ py }) => py)];
}

/** Whether a stretch shows the loom's face, not from behind, and no more slanted than is measured. */
function likeALoom([a, b, , d, e]: Stretch, mirrored: boolean): boolean {
  const turning = a * e - b * d;
  if (mirrored ? turning <= 0 : turning >= 0) return false;
  const squares = a * a + b * b + d * d + e * e;
  // Of singular values s ≥ t: s² + t² and s t are known.
  return squares / Math.abs(turning) < MOST_SLANTED + 1 / MOST_SLANTED;
}

function broughtTogether([a, b, c, d, e, f]: Stretch, all: readonly LookAlike[], most: number): number[] {
  const out: number[] = [];
  for (let k = 0; k < all.length; k++) {
    const { x, y, px, py } = all[k]!;
    if (Math.abs(a * x + b * y + c - px) < most && Math.abs(d * x + e * y + f - py) < most) out.push(k);
  }
  return out;
}

/** Separate places among look-alikes, on the loom and in the picture. */
function placesOf(all: readonly LookAlike[], which: readonly number[]): number {
  const places = new Set(which.map((k) => `${Math.round(all[k]!.x / APART)} ${Math.round(all[k]!.y / APART)}`));
  const seen = new Set(which.map((k) => `${Math.round(all[k]!.px / 20)} ${Math.round(all[k]!.py / 20)}`));
  return Math.min(places.size, seen.size);
}
