import type { ServerResponse } from 'node:http';
import type { HostEvent } from '../../core/contract/hostApi.ts';

const PAGES_AT_MOST = 24;
const BEAT_MS = 15_000;

/** Events to every open page, as server-sent events. */
export class EventStreams {
  readonly #open = new Set<ServerResponse>();
  readonly #beat = setInterval(() => this.#write(': still here\n\n'), BEAT_MS).unref();

  /** @returns false when too many pages listen already. */
  add(response: ServerResponse): boolean {
    if (this.#open.size >= PAGES_AT_MOST) return false;
    this.#open.add(response);
    response.on('close', () => this.#open.delete(response));
    response.write('retry: 1000\n\n');
    return true;
  }
  tell(event: HostEvent): void {
    this.#write(`data: ${JSON.stringify(event)}\n\n`);
  }
  close(): void {
    clearInterval(this.#beat);
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
