/** A repeatable stream of numbers: the same seed always draws the same piece. (mulberry32) */
export class SeededRandom {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed, 2_654_435_761) ^ 0x5bd1e995) >>> 0;
  }

  /** 0 up to but not including 1. */
  unit(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.unit();
  }

  /** A whole number, both bounds included. */
  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1));
  }

  /** Spread evenly over the sizes between, so that small and large come equally often. */
  size(low: number, high: number): number {
    return Math.round(Math.exp(this.between(Math.log(low), Math.log(high))));
  }

  chance(share: number): boolean {
    return this.unit() < share;
  }

  pick<Value>(values: readonly Value[]): Value {
    const value = values[this.whole(0, values.length - 1)];
    if (value === undefined) throw new RangeError('There is nothing to pick from.');
    return value;
  }
}
