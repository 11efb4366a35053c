/** The value below which the given share of a list lies; the list is not changed. NaN for an empty list. */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return Number.NaN;
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (place - low);
}

export const median = (values: ArrayLike<number>): number => quantile(values, 0.5);

/** Standard deviation as the middle of the list tells it: 1.4826 times the median distance from the median. */
export function robustSigma(values: ArrayLike<number>): number {
  const middle = median(values);
  return 1.4826 * median(Array.from(values, (value) => Math.abs(value - middle)));
}

/** The running mean over `2 * reach + 1` places, shorter at the ends. */
export function boxMean(values: Float32Array, reach: number): Float32Array {
  const size = values.length;
  const sums = new Float64Array(size + 1);
  for (let i = 0; i < size; i++) sums[i + 1] = sums[i]! + values[i]!;
  const means = new Float32Array(size);
  for (let i = 0; i < size; i++) {
    const from = Math.max(0, i - reach);
    const to = Math.min(size, i + reach + 1);
    means[i] = (sums[to]! - sums[from]!) / (to - from);
  }
  return means;
}
