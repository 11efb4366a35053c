/** What is being worked out for a page, by the name the page gave it, so that it can be stopped when it isn't wanted. */
export class Jobs {
  readonly #running = new Map<string, AbortController>();

  /** Runs one job; another of the same name that still runs is stopped. */
  async run<Result>(job: string, work: (signal: AbortSignal) => Promise<Result>): Promise<Result> {
    const abort = new AbortController();
    this.stop(job);
    this.#running.set(job, abort);
    try {
      return await work(abort.signal);
    } finally {
      if (this.#running.get(job) === abort) this.#running.delete(job);
    }
  }

  stop(job: string): void {
    this.#running.get(job)?.abort();
  }

  stopAll(): void {
    for (const abort of this.#running.values()) abort.abort();
  }
}
