import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import { type LocatedLoom, type LoomPose, type StringTrack, toPhoto } from '../../src/core/photo/loomPose.ts';
import type { Photo } from '../../src/core/photo/raster.ts';
import { type Brief, parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { decodePhoto } from '../../src/main/decode/decodePhoto.ts';

/** The parts of a rendered photograph's truth from which the camera that took it can be rebuilt. */
interface RenderedTruth {
  readonly camera: {
    readonly lens: number;
    readonly target: readonly [number, number, number];
    readonly pitch: number;
    readonly yaw: number;
    readonly roll: number;
    readonly dist: number;
  };
  readonly lens_k1: number;
  readonly ends: readonly {
    readonly index: number;
    readonly notch_x_mm: number;
    readonly fell_mm: number | null;
    readonly x_at_fell_mm: number;
    readonly missing?: boolean;
  }[];
}

type Matrix = readonly (readonly [number, number, number])[];
const degrees = (value: number): number => (value * Math.PI) / 180;
const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => [0, 1, 2].map((j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0))) as never;

/**
 * The pose of a rendered picture from the renderer's own camera: looking at `target` from `dist` mm, turned by pitch and
 * yaw, rolled about its axis; a lens of `lens` mm on a sensor whose longer side is 36 mm.
 */
function renderedPose(
  truth: RenderedTruth,
  width: number,
  height: number,
): Pick<LoomPose, 'homography' | 'lens' | 'focal'> {
  const { pitch, yaw, roll, dist, target, lens } = truth.camera;
  const [p, y, r] = [degrees(pitch), degrees(yaw), degrees(roll)];
  const back = [Math.sin(y) * Math.cos(p), -Math.sin(p), Math.cos(y) * Math.cos(p)] as const;
  const place = target.map((value, i) => value + back[i]! * dist);
  const length = Math.hypot(back[0] * back[1], 1 - back[1] ** 2, back[2] * back[1]);
  const up = [(-back[0] * back[1]) / length, (1 - back[1] ** 2) / length, (-back[2] * back[1]) / length] as const;
  const across = [
    up[1] * back[2] - up[2] * back[1],
    up[2] * back[0] - up[0] * back[2],
    up[0] * back[1] - up[1] * back[0],
  ] as const;
  const upright: Matrix = [0, 1, 2].map((i) => [across[i]!, up[i]!, back[i]!]) as never;
  const camera = times(upright, [
    [Math.cos(r), -Math.sin(r), 0],
    [Math.sin(r), Math.cos(r), 0],
    [0, 0, 1],
  ]);
  const focal = (lens / 36) * Math.max(width, height);
  // A point (x, y, 0) seen by the camera: three linear forms, of which the homography is made.
  const form = (k: number): [number, number, number] => [
    camera[0]![k]!,
    camera[1]![k]!,
    -place.reduce((sum, value, i) => sum + value * camera[i]![k]!, 0),
  ];
  const [x, v, z] = [form(0), form(1), form(2)];
  // The middle of the first pixel is (0, 0), half a pixel from the picture's corner.
  const cx = width / 2 - 0.5;
  const cy = height / 2 - 0.5;
  const rows = [
    x.map((value, i) => focal * value - cx * z[i]!),
    v.map((value, i) => -focal * value - cy * z[i]!),
    z.map((value) => -value),
  ];
  // The renderer maps distorted to undistorted radii: turned round by least squares over the picture.
  let [s4, s6, s8, t1, t2] = [0, 0, 0, 0, 0];
  for (let d = 0.02; d <= 1; d += 0.02) {
    const u = d * (1 + truth.lens_k1 * d * d);
    const e = d / u - 1;
    s4 += u ** 4;
    s6 += u ** 6;
    s8 += u ** 8;
    t1 += u * u * e;
    t2 += u ** 4 * e;
  }
  const determinant = s4 * s8 - s6 * s6;
  return {
    homography: Float64Array.from(rows.flat()),
    focal,
    lens: {
      centreX: width / 2,
      centreY: height / 2,
      halfDiagonal: Math.hypot(width, height) / 2,
      k1: (t1 * s8 - t2 * s6) / determinant,
      k2: (s4 * t2 - s6 * t1) / determinant,
    },
  };
}

export interface RenderedPhoto {
  readonly photo: Photo;
  readonly brief: Brief;
  readonly piece: Piece;
  readonly truth: unknown;
  readonly located: LocatedLoom;
}

/**
 * A rendered photograph with the loom already located as the renderer knows it, so that reading the cloth can be
 * tested apart from finding the loom. Only the upper half of the bare strings is given, in case they say where to stop.
 */
export async function renderedPhoto(folder: string, name: string): Promise<RenderedPhoto> {
  const json = (kind: string): unknown => JSON.parse(readFileSync(join(folder, `${name}.${kind}.json`), 'utf8'));
  const decoded = await decodePhoto(readFileSync(join(folder, `${name}.jpg`)));
  if (!decoded.ok) throw new Error(decoded.problem.sentence);
  const photo = decoded.value;
  const parsed = parseBrief(json('brief'));
  if (!parsed.ok) throw new Error(parsed.problem.sentence);
  const brief = parsed.value;
  const truth = json('truth') as RenderedTruth;
  const view = renderedPose(truth, photo.width, photo.height);
  const height = brief.loom.opening_height_mm;
  const base = brief.cloth.base_above_bottom_bar_mm;
  const middle =
    (-(brief.loom.notches - 1) / 2 + brief.warp.first_notch + (brief.warp.ends - 1) / 2) * brief.loom.notch_pitch_mm;
  const a = toPhoto(view, middle - 10, base + 50);
  const b = toPhoto(view, middle + 10, base + 50);
  const pose: LoomPose = {
    ...view,
    sharedSigma: () => ({ x: 0.1, y: 0.1 }),
    reference: {
      method: 'points',
      parts: [],
      mmPerPx: 20 / Math.hypot(b.x - a.x, b.y - a.y),
      residualMm: 0.05,
      lensK1: view.lens.k1,
      lensK2: view.lens.k2,
      lens: null,
      homography: [...view.homography],
      photoWidth: photo.width,
      photoHeight: photo.height,
      scaleSigma: 0.0003,
      baseSigmaMm: 0.05,
    },
  };
  const tracks = truth.ends.map((end): StringTrack => {
    if (end.missing) return { end: end.index, why: 'no string', notchX: null, bare: [] };
    const fell = base + (end.fell_mm ?? 0);
    const bare: { y: number; x: number; sigma: number }[] = [];
    for (let y = Math.max(fell + 20, (base + height) / 2 + 20); y < height - 3; y += 3) {
      const share = (y - fell) / (height - fell);
      bare.push({ y, x: middle + end.x_at_fell_mm * (1 - share) + end.notch_x_mm * share, sigma: 0.1 });
    }
    return { end: end.index, why: null, notchX: measurement(end.notch_x_mm + middle, 0.05, 1, 'renderer'), bare };
  });
  const counted = tracks.filter((track) => track.why === null).length;
  return {
    photo,
    brief,
    piece: pieceFromBrief(brief, '2026-01-01T00:00:00Z'),
    truth,
    located: { pose, tied: null, endsCounted: counted, tracks, remarks: [] },
  };
}
