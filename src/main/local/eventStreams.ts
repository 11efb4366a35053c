import type { ServerResponse } from 'node:http';
import type { HostEvent } from '../../core/contract/hostApi.ts';

const PAGES_AT_MOST = 24;
const BEAT_MS = 15_000;
/** A page that is only being loaded again listens again well before this. */
const GONE_MS = 10_000;

/** Events to every open page, as server-sent events. */
export class EventStreams {
  readonly #open = new Set<ServerResponse>();
  #gone: ReturnType<typeof setTimeout> | undefined;
  readonly #beat = setInterval(() => this.#write(': still here\n\n'), BEAT_MS).unref();

  /**
   * @param onGone called when for a while no page has listened any more.
   * @param goneAfterMs how long that is.
   */
  constructor(
    private readonly onGone: () => void,
    private readonly goneAfterMs = GONE_MS,
  ) {}

  /** @returns false when too many pages listen already. */
  add(response: ServerResponse): boolean {
    if (this.#open.size >= PAGES_AT_MOST) return false;
    this.#open.add(response);
    clearTimeout(this.#gone);
    response.on('close', () => {
      this.#open.delete(response);
      if (this.#open.size > 0) return;
      clearTimeout(this.#gone);
      this.#gone = setTimeout(this.onGone, this.goneAfterMs).unref();
    });
    response.write('retry: 1000\n\n');
    return true;
  }
  tell(event: HostEvent): void {
    this.#write(`data: ${JSON.stringify(event)}\n\n`);
  }
  close(): void {
    clearInterval(this.#beat);
    clearTimeout(this.#gone);
    for (const response of this.#open) response.end();
    this.#open.clear();
  }
  #write(text: string): void {
    for (const response of this.#open) {
      // A page that doesn't read loses its stream rather than filling our memory; it asks again by itself.
      if (response.writableLength > 1 << 20) response.destroy();
      else response.write(text);
    }
  }
}
