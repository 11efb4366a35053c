/** Lets through a burst, then so many a second: a page that runs wild can't take the computer with it. */
export class RateLimit {
  #tokens: number;
  #at: number;
  constructor(
    readonly burst: number,
    readonly perSecond: number,
    readonly nowMs: () => number,
  ) {
    this.#tokens = burst;
    this.#at = nowMs();
  }
  allow(): boolean {
    const now = this.nowMs();
    this.#tokens = Math.min(this.burst, this.#tokens + ((now - this.#at) / 1000) * this.perSecond);
    this.#at = now;
    if (this.#tokens < 1) return false;
    this.#tokens -= 1;
    return true;
  }
}
