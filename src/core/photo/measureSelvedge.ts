import { type Measurement, measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { sideEdges } from './sideEdge.ts';
import { sideEvidence, sideFeatures } from './sideEvidence.ts';
import { sidePath } from './sidePath.ts';
import { sideStrip } from './sideStrip.ts';
import { median, robustSigma } from './statistics.ts';

/** One side's selvedge at one height: cloth x, or null where it wasn't seen. */
export interface SideReading {
  readonly y: number;
  readonly x: Measurement | null;
}

/** Heights between readings, mm. */
const EVERY = 2;

/**
 * One selvedge by height: the weft's outer edge, scallops smoothed by a running median.
 * @param guideX cloth x of that side's outer end at a height.
 * @param yTop how high the side is woven.
 */
export function measureSide(
  sampler: LoomSampler,
  frame: ClothFrame,
  side: 'left' | 'right',
  guideX: (y: number) => number,
  yTop: number,
): SideReading[] {
  if (yTop < 2) return [];
  const strip = sideStrip(sampler, frame, side, guideX, yTop);
  const features = sideFeatures(strip, frame);
  if (features.rows < 2) return [];
  const usual = 0.5 * frame.pitch + 2 * frame.planPass;
  let edge = new Float32Array(features.rows).fill(usual);
  const inner = -strip.outward[0]! + usual;
  const margins = [
    { inside: 1.6 * frame.pitch + 1, deep: inner, outsideFrom: 6, outsideTo: 30 },
    { inside: 0.15 * frame.pitch, deep: 2.5 * frame.pitch, outsideFrom: 0.7, outsideTo: 7 },
    { inside: 0.15 * frame.pitch, deep: 2.5 * frame.pitch, outsideFrom: 0.7, outsideTo: 7 },
  ];
  for (const margin of margins) {
    const evidence = sideEvidence(strip, features, edge, margin);
    if (!evidence) break;
    edge = new Float32Array(sidePath(strip, evidence, 1.2));
  }
  const rough = new Float32Array(strip.rows);
  for (let r = 0; r < strip.rows; r++) {
    const place = Math.min(features.rows - 1, r / features.everyRow);
    const low = Math.floor(place);
    const high = Math.min(features.rows - 1, low + 1);
    rough[r] = edge[low]! + (edge[high]! - edge[low]!) * (place - low);
  }
  const edges = sideEdges(strip, rough, frame);
  const sign = side === 'left' ? -1 : 1;
  const window = Math.max(2, 3 * frame.planPass);
  const readings: SideReading[] = [];
  for (let y = 1; y <= yTop - 1; y += EVERY) {
    const near: number[] = [];
    let rows = 0;
    for (let r = 0; r < strip.rows; r++) {
      const height = strip.yStart + r * strip.yStep;
      if (Math.abs(height - y) > window) continue;
      rows++;
      if (!Number.isNaN(edges.outward[r]!)) near.push(strip.guide[r]! + sign * edges.outward[r]!);
    }
    if (near.length < 0.4 * rows || near.length < 3) {
      readings.push({ y, x: null });
      continue;
    }
    // Neighbouring rows share a float: each float is one reading.
    const floats = Math.max(1, (near.length * strip.yStep) / (2 * frame.planPass));
    const sigma = Math.hypot(robustSigma(near) / Math.sqrt(floats), 0.06, 0.15 * frame.mmPerPx);
    readings.push({ y, x: measurement(median(near), sigma, Math.round(floats), 'selvedge profile') });
  }
  return readings;
}
