import { type Mm, mm } from '../model/units.ts';

/**
 * Crimp of a weft that bends over straight warp strings: how much longer it is than the cloth is wide, as a share.
 * F. T. Peirce, "The geometry of cloth structure", J. Textile Inst. 28 (1937) T45, with all the bending in the weft:
 * sin θ = D/p, so l = D (θ + cot θ) and c = cos θ + θ sin θ − 1.
 * @param ratio p/D: distance between strings over string and weft thickness together. Below 1 the strings are closer
 *   than the weft can pass straight between; the figure at 1, π/2 − 1, then holds.
 */
export function peirceCrimp(ratio: number): number {
  if (ratio <= 1) return Math.PI / 2 - 1;
  const angle = Math.asin(1 / ratio);
  return Math.cos(angle) + angle * Math.sin(angle) - 1;
}

/** The same slack as a share of the yarn instead of the cloth (ASTM D3883, ISO 7211-3; value from memory). */
export const takeUpFromCrimp = (crimp: number): number => crimp / (1 + crimp);
export const crimpFromTakeUp = (takeUp: number): number => takeUp / (1 - takeUp);

export interface WeftGeometry {
  /** Distance between neighbouring ends. */
  readonly pitch: Mm;
  readonly stringDiameter: Mm;
  readonly stringsPerEnd: number;
  readonly weftDiameter: Mm;
}

export interface WeftPerEnd {
  /** mm of weft for one end and the gap beside it. */
  readonly length: Mm;
  /** As a share of the pitch. */
  readonly crimp: number;
  /** True when the gap is closer than the weft can pass straight, so the figure is a bound. */
  readonly crowded: boolean;
}

/**
 * Weft for one end. Over the strings of an end that lie side by side it is flat; over the rest it bends as Peirce's
 * weft does. The doubled end is our own model; common practice has none, and a measured use replaces it.
 */
export function weftPerEnd({ pitch, stringDiameter, stringsPerEnd, weftDiameter }: WeftGeometry): WeftPerEnd {
  const flat = Math.min(pitch, (stringsPerEnd - 1) * stringDiameter);
  const bent = pitch - flat;
  const ratio = bent / (stringDiameter + weftDiameter);
  const length = flat + bent * (1 + peirceCrimp(ratio));
  return { length: mm(length), crimp: length / pitch - 1, crowded: ratio < 1 };
}

/**
 * What one turn takes beyond the two passes it joins: half way round the outer end, less the half pitch each pass is
 * already counted past it, and never less than the climb from one pass to the next.
 */
export function turnExtra(geometry: WeftGeometry, passHeight: Mm): Mm {
  const { stringDiameter, stringsPerEnd, weftDiameter } = geometry;
  const flat = (stringsPerEnd - 1) * stringDiameter;
  const round = flat + (Math.PI * (stringDiameter + weftDiameter)) / 2;
  return mm(Math.max(passHeight, round - weftPerEnd(geometry).length));
}
