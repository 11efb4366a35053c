import type { PhotoPx } from '../model/units.ts';
import type { Camera } from './camera.ts';
import { type CameraPrior, usualWood } from './coarseCamera.ts';
import { cameraOtherWayUp } from './coarsePose.ts';
import { type ColourEdges, colourEdges, directionsApart, NO_EDGE } from './colourEdges.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import type { FrameEdge } from './frameEdges.ts';
import { type FrameLines, frameLines } from './frameLines.ts';
import { type FrameQuad, frameQuads, sameFrame, usualSupport } from './frameQuads.ts';
import { frameThings } from './knownThings.ts';
import {
  framesOfAnySize,
  framesOneSideOff,
  type LinesAsFrame,
  plannedFrames,
  type StringScale,
} from './linesAsFrame.ts';
import { oddSide } from './oddSide.ts';
import { cameraFromPoints } from './pointsCamera.ts';
import { fitPose } from './poseFit.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, enlargedCoordinate, reducedCoordinate, reducePhoto, reductionFor } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';
import { seatsBeside } from './seatCombs.ts';
import { median } from './statistics.ts';
import { baseEvidence } from './uprightness.ts';
import { woodEnds } from './woodEnds.ts';

/** A first idea of where the loom is, from the frame's own edges. */
export interface FrameLook {
  readonly camera: Camera;
  /** Sum over the eight edges of the share that is there beyond chance, 0–8. */
  readonly edges: number;
  /** How alike the four sides are, and how unlike what lies beside them, 0–1. */
  readonly wood: number;
  /** Colour change at the plan's base line, grey levels, and the same with the loom taken the other way up. */
  readonly base: number;
  readonly baseOther: number;
  /** How string-like the ends' places near the top bar are, and the places half a pitch aside, about 0–1.5. */
  readonly strings: number;
  readonly between: number;
  readonly score: number;
  /** The plan, with the opening that the frame was taken to have. */
  readonly expected: Expected;
}

/** A look below this may be chance: edges, wood, strings and upright together seldom reach it so. */
export const FAIR_LOOK = 8.5;
/** Long side of the copy the frame is looked for in, px. */
const LONGEST = 640;
const CANDIDATES = 40;
const LOOKS = 48;
/** Frames apart from each other that are judged by their strings. */
const SETTLED = 8;

/** What a frame is looked for in. */
interface Scene {
  readonly photo: Photo;
  readonly factor: number;
  readonly picture: ColourRaster;
  readonly edges: ColourEdges;
  readonly usual: Float64Array;
  readonly expected: Expected;
  readonly prior: CameraPrior;
  readonly mirrored: boolean;
}

interface Settled {
  readonly camera: Camera;
  readonly expected: Expected;
  readonly edges: number;
  readonly wood: number;
  /** How far from a usual camera it takes to see a frame there, beyond what lenses make likely, in sigmas. */
  readonly odd: number;
}

/** A photograph as frames are looked for in it: what is found in it is found once. */
export interface FramePicture
  extends Pick<Scene, 'photo' | 'factor' | 'picture' | 'edges' | 'usual' | 'prior' | 'mirrored'> {
  readonly lines: readonly FrameLines[];
  /** The usual focal length, px of the reduced picture. */
  readonly focal: number;
}

export function framePicture(photo: Photo, prior: CameraPrior, mirrored: boolean): FramePicture {
  const factor = reductionFor(photo, LONGEST);
  const picture = reducePhoto(photo, factor);
  const edges = colourEdges(picture);
  const focal = Math.exp(prior.logFocal) / factor;
  return {
    photo,
    factor,
    picture,
    edges,
    usual: usualSupport(edges),
    prior,
    mirrored,
    lines: frameLines(edges),
    focal,
  };
}

/** First ideas of the loom from its frame, best first, at most `most`, each the way up that the cloth speaks for. */
export const frameLooks = (seen: FramePicture, expected: Expected, most: number): FrameLook[] =>
  looksAmong(seen, plannedFrames(seen.lines, seen.edges, expected), most);

/** The same for a frame of any size and proportions about strings of the planned pitch. */
export const looksOfAnySize = (seen: FramePicture, expected: Expected, scale: StringScale, most: number): FrameLook[] =>
  anySizeAmong(seen, framesOfAnySize(seen.lines, seen.edges, expected, scale, seen.focal), most);

/** The same for a frame of the planned width or of the planned height, its rails along one of some strings. */
export const looksOneSideOff = (
  seen: FramePicture,
  expected: Expected,
  strings: readonly StringScale[],
  most: number,
): FrameLook[] => anySizeAmong(seen, framesOneSideOff(seen.lines, seen.edges, expected, strings, seen.focal), most);

/** Of any size there are so many frames that fewer are looked at: their edges must be there, and as clearly as others'. */
const ANY_SIZE = { least: 4.2, behind: 1.6 } as const;
/** So many frames of any size are tried, those of the strongest directions first: a checked cloth has millions of them. */
const MOST_TRIED = 250_000;

function* firstOf<Item>(items: Iterable<Item>, most: number): Generator<Item> {
  let left = most;
  for (const item of items) {
    if (left-- <= 0) return;
    yield item;
  }
}

const anySizeAmong = (seen: FramePicture, among: Iterable<LinesAsFrame>, most: number): FrameLook[] =>
  looksAmong(seen, firstOf(among, MOST_TRIED), most, ANY_SIZE);

function looksAmong(
  seen: FramePicture,
  among: Iterable<LinesAsFrame>,
  most: number,
  { least, behind }: { readonly least?: number; readonly behind?: number } = {},
): FrameLook[] {
  const quads = frameQuads(
    seen.edges,
    among,
    seen.focal,
    (map, expected) => WOOD * woodOf(map, { ...seen, expected }),
    CANDIDATES,
    least,
    behind,
  );
  const settled = quads
    .flatMap((quad) => {
      const scene = { ...seen, expected: quad.expected };
      const camera = cameraOfQuad(quad, scene);
      const one = camera && settle(camera, scene);
      // Lines of a checked table are bolder than wood's edges, but have table between them.
      return one && oddSide(scene.picture, toSmall(one.camera, scene), one.expected) === null ? [one] : [];
    })
    .sort((a, b) => scoreOf(b) - scoreOf(a));
  const apart: Settled[] = [];
  for (const one of settled) {
    if (apart.length === SETTLED) break;
    if (!apart.some((other) => sameView(other, one, seen))) apart.push(one);
  }
  return apart
    .map((one) => judged(one, { ...seen, expected: one.expected }))
    .sort((a, b) => b.score - a.score)
    .slice(0, most);
}

/** Which way up, and whether strings stand where the plan has them. */
function judged(one: Settled, scene: Scene): FrameLook {
  const { picture, expected, photo, mirrored } = scene;
  const ways = [one.camera, cameraOtherWayUp(one.camera, expected)].map((camera) => ({
    camera,
    base: baseEvidence(picture, toSmall(camera, scene), expected),
  }));
  const [up, down] = ways.sort((a, b) => b.base - a.base) as [(typeof ways)[0], (typeof ways)[0]];
  const seats = seatsBeside(photo, mapOf(up.camera, photo, mirrored), expected);
  const upright = (up.base - down.base) / (up.base + down.base + 10);
  return {
    camera: up.camera,
    edges: one.edges,
    wood: one.wood,
    base: up.base,
    baseOther: down.base,
    strings: seats.evidence,
    between: seats.between,
    score: scoreOf(one) + 1.5 * Math.max(seats.evidence, seats.between) + 1.5 * upright,
    expected,
  };
}

/** From so many sigma of what cameras usually are on, and what each more takes from a look's score. */
const ODD_CAMERA = 2;
const ODD_COSTS = 0.5;

/** What it says for a frame that its sides look like one wood. */
const WOOD = 2.5;

const scoreOf = (one: Settled): number => one.edges + WOOD * one.wood - ODD_COSTS * one.odd;

const toSmall = (camera: Camera, { photo, mirrored, factor }: Pick<Scene, 'photo' | 'mirrored' | 'factor'>) => {
  const map = mapOf(camera, photo, mirrored);
  return (x: number, y: number, z = 0) => {
    const seen = map(x, y, z);
    return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
  };
};

/** Whether two cameras put the opening's corners within a few millimetres, either way up. */
function sameView(a: Settled, b: Settled, seen: FramePicture): boolean {
  const corners = ({ camera, expected }: Settled): FrameQuad['corners'] => {
    const { openingWidth, openingHeight } = expected;
    const half = openingWidth / 2;
    const map = toSmall(camera, seen);
    return [map(-half, 0), map(half, 0), map(half, openingHeight), map(-half, openingHeight)];
  };
  return sameFrame(corners(a), corners(b), 0.012 * Math.hypot(seen.picture.width, seen.picture.height));
}

function cameraOfQuad({ corners }: FrameQuad, { factor, expected, prior, photo, mirrored }: Scene): Camera | null {
  const points = corners.map((corner) => ({
    x: enlargedCoordinate(corner.x, factor) as PhotoPx,
    y: enlargedCoordinate(corner.y, factor) as PhotoPx,
  }));
  const [a, b, c] = points;
  const clockwise = (b!.x - a!.x) * (c!.y - b!.y) - (b!.y - a!.y) * (c!.x - b!.x) > 0;
  // Going round the other way the first two corners must still be those of one bar.
  const round = clockwise === mirrored ? points : [points[1]!, points[0]!, points[3]!, points[2]!];
  const placed = cameraFromPoints(round, expected, prior, photo);
  return placed.ok ? placed.value.camera : null;
}

/** Fits the camera, its lens included, to the edge pixels nearest to where it expects the frame's edges. */
function settle(start: Camera, scene: Scene): Settled {
  const { photo, expected, prior, mirrored } = scene;
  let camera = start;
  for (const reach of [6, 4, 2.5]) {
    const edges = frameSides(expected).map((side) => edgeNear(camera, side, reach, scene));
    const things = frameThings({ edges }, expected, camera, photo, mirrored);
    if (things.length < 4) break;
    const fit = fitPose(things, camera, usualWood, prior, photo, mirrored);
    camera = fit.camera;
  }
  const sides = frameSides(expected).map((side) => {
    const { support, direction } = edgeNear(camera, side, 2, scene);
    const anywhere = scene.usual[direction]!;
    return Math.max(0, (support - anywhere) / (1 - anywhere));
  });
  return {
    camera,
    expected,
    edges: sides.reduce((sum, value) => sum + value, 0),
    wood: woodOf(toSmall(camera, scene), scene),
    odd: Math.max(0, Math.abs(camera.logFocal - prior.logFocal) / prior.logFocalSigma - ODD_CAMERA),
  };
}

interface Side {
  readonly side: FrameEdge['side'];
  readonly kind: FrameEdge['kind'];
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

function frameSides({ openingWidth, openingHeight, bar }: Expected): Side[] {
  return (['outer', 'inner'] as const).flatMap((kind) => {
    const out = kind === 'outer' ? bar : 0;
    const x = openingWidth / 2 + out;
    const low = -out;
    const high = openingHeight + out;
    return [
      { side: 'bottom', kind, from: [-x, low], to: [x, low] },
      { side: 'right', kind, from: [x, low], to: [x, high] },
      { side: 'top', kind, from: [x, high], to: [-x, high] },
      { side: 'left', kind, from: [-x, high], to: [-x, low] },
    ] satisfies Side[];
  });
}

const INWARD = { bottom: [0, 1], top: [0, -1], left: [1, 0], right: [-1, 0] } as const;
/** From the outer edge inward, share of a bar: there the wood's colour is seen, clear of rounding and of strings. */
const ON_WOOD = 0.35;
/** So many pixels of the small picture either side of an edge its colours are compared. */
const ASIDE = 3;
/** Whether the frame's wood, seen at `wood`, ends at a place of the small picture. */
function endsWood(picture: ColourRaster, place: { x: number; y: number }, wood: { x: number; y: number }): boolean {
  const far = Math.hypot(wood.x - place.x, wood.y - place.y);
  if (far < ASIDE) return true;
  const [dx, dy] = [((wood.x - place.x) / far) * ASIDE, ((wood.y - place.y) / far) * ASIDE];
  const colours = new Float64Array(9);
  sampleColour(picture, wood.x, wood.y, colours, 0);
  sampleColour(picture, place.x + dx, place.y + dy, colours, 3);
  sampleColour(picture, place.x - dx, place.y - dy, colours, 6);
  return woodEnds(colours, 0, 3, 6);
}

/** Edge pixels of about the right direction nearest to a side, within `reach` px of the small picture. */
function edgeNear(
  camera: Camera,
  { side, kind, from, to }: Side,
  reach: number,
  scene: Scene,
): FrameEdge & { direction: number } {
  const { edges, factor, expected } = scene;
  const map = toSmall(camera, scene);
  const depth = -expected.stringDiameter / 2;
  const points: { px: number; py: number }[] = [];
  const [inX, inY] = INWARD[side];
  let middle = 0;
  for (let k = 0; k < LOOKS; k++) {
    const at = (share: number, inward = 0) =>
      map(
        from[0] + share * (to[0] - from[0]) + inward * inX,
        from[1] + share * (to[1] - from[1]) + inward * inY,
        depth,
      );
    const here = at((k + 0.5) / LOOKS);
    const next = at((k + 0.9) / LOOKS);
    const wood = kind === 'outer' ? at((k + 0.5) / LOOKS, ON_WOOD * expected.bar) : null;
    const angle = Math.atan2(next.y - here.y, next.x - here.x);
    const along = Math.round((angle * 180) / Math.PI + 360) % 180;
    if (k === LOOKS >> 1) middle = along;
    const nx = -Math.sin(angle);
    const ny = Math.cos(angle);
    // Outward from the expected place, by half pixels, on both sides in turn.
    for (let step = 0; step <= 4 * reach; step++) {
      const aside = ((step & 1 ? 1 : -1) * ((step + 1) >> 1)) / 2;
      const column = Math.round(here.x + aside * nx);
      const row = Math.round(here.y + aside * ny);
      if (column < 0 || row < 0 || column >= edges.width || row >= edges.height) continue;
      const value = edges.direction[row * edges.width + column]!;
      if (value === NO_EDGE || directionsApart(value, along) > 8) continue;
      const place = { x: here.x + aside * nx, y: here.y + aside * ny };
      if (wood && !endsWood(scene.picture, place, wood)) continue;
      points.push({ px: enlargedCoordinate(place.x, factor), py: enlargedCoordinate(place.y, factor) });
      break;
    }
  }
  return { side, kind, points, support: points.length / LOOKS, direction: middle };
}

/** The four sides are cut from the same wood, and the table and the opening beside them are not wood: 0–1. */
function woodOf(map: (x: number, y: number, z?: number) => { x: number; y: number }, scene: Scene): number {
  const { expected, picture } = scene;
  const { openingWidth, openingHeight, bar } = expected;
  const colour = new Float64Array(3);
  const lookAt = (out: number) => {
    const x = openingWidth / 2 + out;
    const low = -out;
    const high = openingHeight + out;
    const rim: [number, number][] = [];
    for (let k = 0; k < 14; k++) {
      const share = (k + 0.5) / 14;
      rim.push(
        [-x + 2 * x * share, low],
        [-x + 2 * x * share, high],
        [-x, low + (high - low) * share],
        [x, low + (high - low) * share],
      );
    }
    return rim.map(([a, b]) => {
      const seen = map(a, b, -expected.stringDiameter / 2);
      if (!insidePicture(picture, seen.x, seen.y)) return null;
      sampleColour(picture, seen.x, seen.y, colour, 0);
      return [colour[0]!, colour[1]!, colour[2]!] as const;
    });
  };
  const wood = lookAt(0.5 * bar);
  const seen = wood.filter((value) => value !== null);
  if (seen.length < 28) return 0;
  const usual = [0, 1, 2].map((c) => median(seen.map((value) => value[c]!)));
  const apart = (value: readonly number[] | null) =>
    value === null ? null : Math.hypot(...value.map((part, c) => part - usual[c]!));
  const within = median(wood.flatMap((value) => apart(value) ?? []));
  // One side of another colour may be in the shade, or it may be no wood.
  const worst = Math.max(
    ...[0, 1, 2, 3].map((side) => {
      const own = wood.flatMap((value, k) => (k % 4 === side ? (apart(value) ?? []) : []));
      return own.length > 4 ? median(own) : 0;
    }),
  );
  const beside = [lookAt(1.35 * bar), lookAt(-0.35 * bar)].map((rim) => rim.flatMap((value) => apart(value) ?? []));
  const without = Math.min(...beside.map((list) => (list.length > 10 ? median(list) : 0)));
  return without / (without + 0.75 * (within + worst) + 6);
}
