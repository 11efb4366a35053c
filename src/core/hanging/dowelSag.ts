import { type Grams, type Mm, mm } from '../model/units.ts';

/** Earth's standard gravity, m/s². */
const gravity = 9.80665;

/**
 * Softwood dowels as sold. Stiffness and weight vary from stick to stick; these are cautious middle values from
 * memory of the Wood Handbook (Forest Products Laboratory, ch. 5).
 */
export const softwood = { stiffness: 9e9, density: 500 } as const;
/**
 * A stick under a steady load goes on bending for months: Eurocode 5 adds 0.6 of the first bow indoors (k_def,
 * service class 1; value from memory).
 */
export const creepShare = 0.6;

/**
 * How far a round dowel held at both ends bows in its middle under an evenly spread load: 5 W L³ / (384 E I), with
 * I = π d⁴/64 (Euler–Bernoulli beam, simply supported, uniform load; Wood Handbook ch. 9, table of beam
 * deflections; formula from memory, checked in the tests by integrating the beam).
 * @param span between the cord's two places, mm.
 * @param load grams of everything that hangs on it; its own weight is added.
 * @param diameter mm.
 * @returns bow at first and after months, mm.
 */
export function dowelSag(span: Mm, load: Grams, diameter: Mm): { readonly first: Mm; readonly later: Mm } {
  const [length, thick] = [span / 1000, diameter / 1000];
  const ownMass = softwood.density * ((Math.PI * thick ** 2) / 4) * length;
  const weight = (load / 1000 + ownMass) * gravity;
  const secondMoment = (Math.PI * thick ** 4) / 64;
  const first = ((5 * weight * length ** 3) / (384 * softwood.stiffness * secondMoment)) * 1000;
  return { first: mm(first), later: mm(first * (1 + creepShare)) };
}
