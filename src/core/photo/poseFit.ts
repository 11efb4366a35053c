import {
  type Camera,
  cameraFromVector,
  cameraProjection,
  cameraSteps,
  cameraToVector,
  lensOf,
  type PictureSize,
  planeHomography,
} from './camera.ts';
import { BAR_ROUNDING, type CameraPrior, OUTER_ROUNDING, RAIL_DEPTH, type WoodShape } from './coarseCamera.ts';
import { invertSymmetric, solveSymmetric } from './leastSquares.ts';
import type { LoomPose } from './loomPose.ts';
import { evidenceSlopes, type PoseEvidence } from './poseEvidence.ts';
import { poseSlopes } from './poseSlopes.ts';

/** Photo points that lie on one straight thing of the loom. */
export interface StraightThing {
  readonly name: string;
  /** The loom coordinate the thing holds to: x for a string, y for a bar. */
  readonly axis: 'x' | 'y';
  /** The value it holds at `anchor` of the other coordinate, mm. */
  readonly value: number;
  readonly anchor: number;
  /** How many times the rounding of inner edges, that of outer ones and the rails' depth are added to the value. */
  readonly inset: WoodShape;
  readonly points: readonly { readonly px: number; readonly py: number; readonly sigma: number }[];
  /** Prior standard deviations of its own freedoms: offset mm, slope, bow mm. Zero leaves a freedom out. */
  readonly offsetSigma: number;
  readonly slopeSigma: number;
  readonly bowSigma: number;
  /** Where the bow begins and ends along the other coordinate. */
  readonly bowStart: number;
  readonly bowEnd: number;
}

export interface PoseFit {
  readonly camera: Camera;
  /** How far inner and outer edges of the wood are seen on the wood's side of where the plan has them, and the rails' depth. */
  readonly wood: WoodShape;
  /** `FITTED` × `FITTED`: camera parameters in the order of `cameraToVector`, then the wood's three. */
  readonly covariance: Float64Array;
  /** Root mean square misfit over all points, mm. */
  readonly residualMm: number;
  /** Misfit over what the sigmas allow, near 1 when they are honest. */
  readonly chi: number;
  /** Per thing: offset, slope, bow, root mean square misfit in mm, share of points kept. */
  readonly things: readonly {
    readonly offset: number;
    readonly slope: number;
    readonly bow: number;
    readonly rms: number;
    readonly kept: number;
  }[];
}

/** Parameters that are fitted together: the camera's and the wood's. */
export const FITTED = 12;
const PARAMETERS = FITTED;
const HUBER = 2.5;

/**
 * Fits camera and lens to straight things whose place on the loom is known: Gauss–Newton over the camera, each thing's
 * own offset, slope and bow eliminated (Schur complement), outlying points held down (Huber).
 * @param evidence what else is known, with full weight: whoever gives it has looked whether it agrees.
 */
export function fitPose(
  things: readonly StraightThing[],
  start: Camera,
  startWood: WoodShape,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
  evidence: readonly PoseEvidence[] = [],
): PoseFit {
  const v = Float64Array.of(...cameraToVector(start), ...startWood);
  const steps = cameraSteps;
  let fit = assemble(things, v, steps, prior, size, mirrored, evidence);
  let damping = 1e-6;
  for (let round = 0; round < 15; round++) {
    const damped = fit.normal.slice();
    for (let i = 0; i < PARAMETERS; i++) damped[i * PARAMETERS + i]! *= 1 + damping;
    const move = solveSymmetric(damped, fit.gradient, PARAMETERS);
    if (!move) break;
    const next = v.map((value, i) => value + move[i]!);
    const tried = assemble(things, next, steps, prior, size, mirrored, evidence);
    if (tried.cost <= fit.cost * (1 + 1e-9)) {
      const gain = fit.cost - tried.cost;
      v.set(next);
      fit = tried;
      damping = Math.max(1e-9, damping / 10);
      if (gain < 1e-5 * (1 + fit.cost)) break;
    } else {
      damping = Math.max(1e-4, damping * 30);
      if (damping > 1e6) break;
    }
  }
  const scale = Math.max(1, fit.chi);
  return {
    camera: cameraFromVector(v),
    wood: [v[9]!, v[10]!, v[11]!],
    covariance: invertSymmetric(fit.normal, PARAMETERS).map((value) => value * scale * scale),
    residualMm: fit.rms,
    chi: fit.chi,
    things: fit.things,
  };
}

/** Homography and lens of a parameter vector. */
export function poseOf(
  v: ArrayLike<number>,
  size: PictureSize,
  mirrored: boolean,
): Pick<LoomPose, 'homography' | 'lens'> {
  const camera = cameraFromVector(v);
  return { homography: planeHomography(cameraProjection(camera, size, mirrored)), lens: lensOf(camera, size) };
}

interface Assembled {
  normal: Float64Array;
  /** Minus half the gradient of the cost. */
  gradient: Float64Array;
  cost: number;
  rms: number;
  chi: number;
  things: { offset: number; slope: number; bow: number; rms: number; kept: number }[];
}

function assemble(
  things: readonly StraightThing[],
  v: Float64Array,
  steps: readonly number[],
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
  evidence: readonly PoseEvidence[],
): Assembled {
  const base = poseOf(v, size, mirrored);
  const nudged = steps.map((step, i) => {
    const w = v.slice();
    w[i]! += step;
    return poseOf(w, size, mirrored);
  });
  const normal = new Float64Array(PARAMETERS * PARAMETERS);
  const gradient = new Float64Array(PARAMETERS);
  let cost = 0;
  let squares = 0;
  let weighed = 0;
  let count = 0;
  const reports: Assembled['things'] = [];
  for (const thing of things) {
    const n = thing.points.length;
    const residual = new Float64Array(n);
    const places = poseSlopes(base, nudged, steps, thing.axis, thing.points, PARAMETERS);
    const { along, slopes: jacobian } = places;
    const inset = thing.inset[0] * v[9]! + thing.inset[1] * v[10]! + thing.inset[2] * v[11]!;
    for (let k = 0; k < n; k++) {
      residual[k] = places.across[k]! - thing.value - inset;
      jacobian[k * PARAMETERS + 9] = -thing.inset[0];
      jacobian[k * PARAMETERS + 10] = -thing.inset[1];
      jacobian[k * PARAMETERS + 11] = -thing.inset[2];
    }
    const freedoms = freedomsOf(thing);
    const m = freedoms.length;
    const basis = new Float64Array(n * m);
    for (let k = 0; k < n; k++) {
      for (let f = 0; f < m; f++) basis[k * m + f] = freedoms[f]!.shape(along[k]!);
    }
    const weight = Float64Array.from(thing.points, (point) => 1 / (point.sigma * point.sigma));
    let own = new Float64Array(m);
    let inner = new Float64Array(m * m);
    // The thing's own line first, so that outliers are judged against it.
    for (let round = 0; ; round++) {
      inner = new Float64Array(m * m);
      const right = new Float64Array(m);
      for (let f = 0; f < m; f++) inner[f * m + f] = 1 / (freedoms[f]!.sigma * freedoms[f]!.sigma);
      for (let k = 0; k < n; k++) {
        for (let f = 0; f < m; f++) {
          const wf = weight[k]! * basis[k * m + f]!;
          right[f]! += wf * residual[k]!;
          for (let g = 0; g < m; g++) inner[f * m + g]! += wf * basis[k * m + g]!;
        }
      }
      own = Float64Array.from(solveSymmetric(inner, right, m) ?? new Float64Array(m));
      // The weights must stay those the line was solved with, or what is taken out below doesn't belong to it.
      if (round === 3) break;
      for (let k = 0; k < n; k++) {
        let left = residual[k]!;
        for (let f = 0; f < m; f++) left -= own[f]! * basis[k * m + f]!;
        const size = Math.abs(left) / thing.points[k]!.sigma;
        weight[k] = (size > HUBER ? HUBER / size : 1) / thing.points[k]!.sigma ** 2;
      }
    }
    const cross = new Float64Array(m * PARAMETERS);
    let rms = 0;
    let kept = 0;
    for (let k = 0; k < n; k++) {
      let left = residual[k]!;
      for (let f = 0; f < m; f++) left -= own[f]! * basis[k * m + f]!;
      const w = weight[k]!;
      const sigma = thing.points[k]!.sigma;
      const inSigmas = Math.abs(left) / sigma;
      cost += inSigmas <= HUBER ? inSigmas * inSigmas : HUBER * (2 * inSigmas - HUBER);
      if (inSigmas <= HUBER * 1.5) {
        rms += left * left;
        kept++;
        weighed += Math.min(inSigmas, HUBER) ** 2;
        count++;
      }
      for (let i = 0; i < PARAMETERS; i++) {
        const wj = w * jacobian[k * PARAMETERS + i]!;
        if (wj === 0) continue;
        gradient[i]! -= wj * left;
        for (let j = i; j < PARAMETERS; j++) normal[i * PARAMETERS + j]! += wj * jacobian[k * PARAMETERS + j]!;
        for (let f = 0; f < m; f++) cross[f * PARAMETERS + i]! += wj * basis[k * m + f]!;
      }
    }
    for (let f = 0; f < m; f++) cost += (own[f]! / freedoms[f]!.sigma) ** 2;
    // Schur complement: take out what the thing's own freedoms could explain.
    for (let i = 0; i < PARAMETERS; i++) {
      const column = Float64Array.from({ length: m }, (_, f) => cross[f * PARAMETERS + i]!);
      const through = solveSymmetric(inner, column, m);
      if (!through) continue;
      for (let j = i; j < PARAMETERS; j++) {
        let sum = 0;
        for (let f = 0; f < m; f++) sum += through[f]! * cross[f * PARAMETERS + j]!;
        normal[i * PARAMETERS + j]! -= sum;
      }
    }
    squares += rms;
    reports.push({
      offset: freedomValue(freedoms, own, 'offset'),
      slope: freedomValue(freedoms, own, 'slope'),
      bow: freedomValue(freedoms, own, 'bow'),
      rms: Math.sqrt(rms / Math.max(1, kept)),
      kept: kept / Math.max(1, n),
    });
  }
  for (const one of evidence) {
    const { misfits, slopes } = evidenceSlopes(one, v, steps, PARAMETERS);
    for (let k = 0; k < misfits.length; k++) {
      const misfit = misfits[k]!;
      cost += misfit * misfit;
      for (let i = 0; i < PARAMETERS; i++) {
        const slope = slopes[k * PARAMETERS + i]!;
        if (slope === 0) continue;
        gradient[i]! -= slope * misfit;
        for (let j = i; j < PARAMETERS; j++) {
          normal[i * PARAMETERS + j]! += slope * slopes[k * PARAMETERS + j]!;
        }
      }
    }
  }
  const addPrior = (i: number, mean: number, sigma: number) => {
    const off = v[i]! - mean;
    cost += (off / sigma) ** 2;
    normal[i * PARAMETERS + i]! += 1 / (sigma * sigma);
    gradient[i]! -= off / (sigma * sigma);
  };
  addPrior(6, prior.logFocal, prior.logFocalSigma);
  addPrior(7, prior.k1, prior.k1Sigma);
  addPrior(8, prior.k2, prior.k2Sigma);
  addPrior(9, BAR_ROUNDING.mm, BAR_ROUNDING.sigma);
  addPrior(10, OUTER_ROUNDING.mm, OUTER_ROUNDING.sigma);
  addPrior(11, RAIL_DEPTH.mm, RAIL_DEPTH.sigma);
  for (let i = 0; i < PARAMETERS; i++) {
    for (let j = 0; j < i; j++) normal[i * PARAMETERS + j] = normal[j * PARAMETERS + i]!;
  }
  return {
    normal,
    gradient,
    cost,
    rms: Math.sqrt(squares / Math.max(1, count)),
    chi: Math.sqrt(weighed / Math.max(1, count)),
    things: reports,
  };
}

interface Freedom {
  readonly kind: 'offset' | 'slope' | 'bow';
  readonly sigma: number;
  readonly shape: (along: number) => number;
}

function freedomsOf(thing: StraightThing): Freedom[] {
  const out: Freedom[] = [];
  const { anchor, bowStart, bowEnd } = thing;
  if (thing.offsetSigma > 0) out.push({ kind: 'offset', sigma: thing.offsetSigma, shape: () => 1 });
  if (thing.slopeSigma > 0) out.push({ kind: 'slope', sigma: thing.slopeSigma, shape: (a) => a - anchor });
  if (thing.bowSigma > 0) {
    out.push({
      kind: 'bow',
      sigma: thing.bowSigma,
      shape: (a) => {
        const t = (a - bowStart) / (bowEnd - bowStart);
        return 4 * t * (1 - t);
      },
    });
  }
  return out;
}

const freedomValue = (freedoms: readonly Freedom[], own: Float64Array, kind: Freedom['kind']): number => {
  const at = freedoms.findIndex((freedom) => freedom.kind === kind);
  return at < 0 ? 0 : own[at]!;
};
