import { packEnvelope, unpackEnvelope } from '../../core/contract/envelope.ts';
import { type Answer, type CallName, type HostApi, type HostEvent, hostEvent } from '../../core/contract/hostApi.ts';
import { failure, type Outcome } from '../../core/model/outcome.ts';
import { readAnswer } from './readAnswer.ts';

const sentences: Readonly<Record<number, readonly [string, string]>> = {
  401: ['This page has lost its key.', 'Open Plumbweft by the address that was printed when it started.'],
  413: ['That file is larger than can be read.', 'Choose a smaller one.'],
  429: ['Too much was asked at once.', 'Wait a moment and try again.'],
};

/** What a page that is going away still sends, and how much of it, bytes: browsers let 64 kB in all outlive a page. */
const lastCalls: readonly CallName[] = ['savePiece', 'saveProgress', 'closePiece', 'writeSettings'];
const LAST_WORDS = 40_000;

/** The host over loopback HTTP: the page came from there, and asks only there. */
export function httpHost(): HostApi {
  return {
    async call<Name extends CallName>(name: Name, params: unknown, bytes?: Uint8Array): Promise<Outcome<Answer<Name>>> {
      let response: Response;
      let packed: Uint8Array;
      const body = packEnvelope(params, bytes ?? null) as Uint8Array<ArrayBuffer>;
      try {
        response = await fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'Content-Type': 'application/octet-stream' },
          body,
          keepalive: lastCalls.includes(name) && body.byteLength < LAST_WORDS,
          credentials: 'same-origin',
          redirect: 'error',
        });
        packed = new Uint8Array(await response.arrayBuffer());
      } catch {
        return failure(
          'host-gone',
          'Plumbweft itself is not running any more.',
          'Start it again with "npm start"; what was kept is on the disk.',
        );
      }
      if (response.status !== 200) {
        const [sentence, remedy] = sentences[response.status] ?? [
          'The program did not take the question.',
          'Load the page again; if it happens again, copy the report and send it to us.',
        ];
        return failure(`http-${response.status}`, sentence, remedy);
      }
      const envelope = unpackEnvelope(packed);
      return readAnswer(name, envelope?.json, envelope?.bytes ?? null);
    },
    listen(listener: (event: HostEvent) => void) {
      const stream = new EventSource('/events');
      stream.onmessage = (message: MessageEvent<string>) => {
        let value: unknown;
        try {
          value = JSON.parse(message.data);
        } catch {
          return;
        }
        const event = hostEvent.safeParse(value);
        if (event.success) listener(event.data);
      };
      return () => stream.close();
    },
  };
}
