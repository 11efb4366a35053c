/** A figure read off a photograph. Nothing shows or stores a bare number read off a picture. */
export interface Measurement {
  readonly value: number;
  /** Standard uncertainty (one sigma), same unit as `value`, always > 0. */
  readonly sigma: number;
  /** How many independent readings stand behind it. */
  readonly n: number;
  /** Where it came from, for example `fell change point` or `selvedge profile`. */
  readonly source: string;
}

export const measurement = (value: number, sigma: number, n: number, source: string): Measurement => ({
  value,
  sigma,
  n,
  source,
});
