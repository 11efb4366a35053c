/**
 * Cumulative normal distribution (Abramowitz & Stegun 7.1.26 on erf, |error| < 1.5e-7).
 * @param bell exp(−z² / 2), where the caller has it already.
 */
export function normalBelow(z: number, bell = Math.exp(-0.5 * z * z)): number {
  const u = Math.abs(z) * Math.SQRT1_2;
  if (u > 4.5) return z > 0 ? 1 : 0;
  const t = 1 / (1 + 0.3275911 * u);
  const erf =
    1 - t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) * bell;
  return z >= 0 ? 0.5 * (1 + erf) : 0.5 * (1 - erf);
}

/** Density of the normal distribution over exp(−z² / 2). */
export const NORMAL_DENSITY = 1 / Math.sqrt(2 * Math.PI);
