import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { packEnvelope, unpackEnvelope } from '../../core/contract/envelope.ts';
import { type HostEvent, hostCalls } from '../../core/contract/hostApi.ts';
import { failure } from '../../core/model/outcome.ts';
import type { Log } from '../log/log.ts';
import { listPageFiles, readPageFile } from '../page/pageFiles.ts';
import { contentPolicy } from '../page/pagePolicy.ts';
import type { HostService } from '../service/service.ts';
import { EventStreams } from './eventStreams.ts';
import { RateLimit } from './rateLimit.ts';
import { readBody } from './readBody.ts';
import { openSession, type Session } from './session.ts';
import { wishedLanguages } from './wishedLanguages.ts';

/** Largest question with a photograph or zip in it, and without. */
const BODY_WITH_BYTES = 640 * 1024 * 1024;
const BODY_PLAIN = 48 * 1024 * 1024;

export interface LocalHostOptions {
  /** Folder of the built page. */
  readonly page: string;
  /** 0 for any free port. */
  readonly port: number;
  readonly log: Log;
  /** Given a way to send events, and what languages the browser asks for, makes the service. */
  readonly service: (tell: (event: HostEvent) => void, languages: () => readonly string[]) => HostService;
  /** How long no page may listen before its pieces are let go, ms. */
  readonly goneAfterMs?: number;
  readonly limits?: { readonly burst: number; readonly perSecond: number };
}

export interface LocalHost {
  readonly port: number;
  /** The address to open: it carries the token. */
  readonly address: string;
  close(): Promise<void>;
}

const headers = {
  'Content-Security-Policy': contentPolicy("'self'"),
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), usb=(), payment=()',
  'Cache-Control': 'no-store',
} as const;

function say(response: ServerResponse, status: number, words: string): void {
  response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${words}\n`);
}

/** Serves the page and its calls on the loopback address only. */
export async function startLocalHost(options: LocalHostOptions): Promise<LocalHost> {
  const files = listPageFiles(options.page);
  // As the browser wished that loaded the page last.
  let languages: readonly string[] = [];
  const service = options.service(
    (event) => events.tell(event),
    () => languages,
  );
  const events = new EventStreams(() => void service.pagesGone(), options.goneAfterMs);
  const { burst, perSecond } = options.limits ?? { burst: 400, perSecond: 80 };
  const calls = new RateLimit(burst, perSecond, () => performance.now());
  // Strangers share one slow allowance, so that a token can't be guessed at any speed.
  const strangers = new RateLimit(60, 2, () => performance.now());
  let session: Session;
  let allowedHosts: ReadonlySet<string> = new Set();

  async function answerRequest(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const host = request.headers.host ?? '';
    if (!allowedHosts.has(host)) return say(response, 421, 'This address is not served here.');
    const { origin } = request.headers;
    const site = request.headers['sec-fetch-site'];
    const fromElsewhere =
      (origin !== undefined && origin !== `http://${host}`) ||
      (site !== undefined && site !== 'same-origin' && site !== 'none' && request.method !== 'GET');
    if (fromElsewhere) return say(response, 403, 'Only its own page may ask.');
    const path = (request.url ?? '/').split('?')[0]!;

    if (!session.isKnown(request.headers.cookie)) {
      if (!strangers.allow()) return say(response, 429, 'Too many tries. Wait a little.');
      if (request.method === 'GET' && path.startsWith('/start/') && session.opens(path.slice('/start/'.length))) {
        response.writeHead(303, { ...headers, 'Set-Cookie': session.setCookie, Location: '/' });
        response.end();
        return;
      }
      return say(response, 401, 'Open Plumbweft by the address that was printed when it started.');
    }
    // Known by its cookie: a picture or script that another page asks for comes without it, being same-site only.
    if (site === 'cross-site' && request.headers['sec-fetch-mode'] !== 'navigate') {
      return say(response, 403, 'Only its own page may ask.');
    }
    if (path.startsWith('/start/')) {
      response.writeHead(303, { ...headers, Location: '/' });
      response.end();
      return;
    }
    if (path.startsWith('/call/')) return answerCall(request, response, path.slice('/call/'.length), origin);
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return say(response, 405, 'Only reading is possible here.');
    if (path === '/events') {
      response.writeHead(200, { ...headers, 'Content-Type': 'text/event-stream' });
      if (!events.add(response)) response.end();
      return;
    }
    if (path === '/') languages = wishedLanguages(request.headers['accept-language'] ?? '');
    const file = files.get(path === '/' ? '/index.html' : path);
    if (file === undefined) return say(response, 404, 'There is nothing at this address.');
    response.writeHead(200, { ...headers, 'Content-Type': file.type });
    response.end(request.method === 'HEAD' ? undefined : readPageFile(file));
  }

  async function answerCall(
    request: IncomingMessage,
    response: ServerResponse,
    name: string,
    origin: string | undefined,
  ): Promise<void> {
    if (request.method !== 'POST') return say(response, 405, 'Calls are made with POST.');
    // A browser always names the origin of a POST; without one the asker is not the page.
    if (origin === undefined) return say(response, 403, 'Only its own page may ask.');
    if (request.headers['content-type'] !== 'application/octet-stream') {
      return say(response, 415, 'Calls travel as application/octet-stream.');
    }
    if (!calls.allow()) return say(response, 429, 'Too many calls. Wait a little.');
    const takesBytes = Object.hasOwn(hostCalls, name) && hostCalls[name as keyof typeof hostCalls].bytes === 'in';
    const body = await readBody(request, takesBytes ? BODY_WITH_BYTES : BODY_PLAIN);
    if (body === null) {
      response.shouldKeepAlive = false;
      return say(response, 413, 'That is more than a call may carry.');
    }
    const question = unpackEnvelope(body);
    const outcome =
      question === null
        ? failure('not-as-agreed', 'The page asked in a way that is not understood.', 'Load the page again.')
        : await service.call(name, question.json, question.bytes);
    response.writeHead(200, { ...headers, 'Content-Type': 'application/octet-stream' });
    response.end(
      outcome.ok
        ? packEnvelope({ ok: true, value: outcome.value.result }, outcome.value.bytes)
        : packEnvelope(outcome, null),
    );
  }

  const server = createServer({ requestTimeout: 180_000, headersTimeout: 15_000, maxHeaderSize: 16_384 });
  server.maxConnections = 128;
  server.on('request', (request, response) => {
    answerRequest(request, response).catch((thrown: unknown) => {
      options.log.write('problem', `request: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
      if (!response.headersSent) say(response, 500, 'Something unexpected happened. Load the page again.');
      else response.destroy();
    });
  });
  server.on('clientError', (_thrown, socket) => socket.destroy());
  const port = await listen(server, options.port);
  session = openSession(port);
  allowedHosts = new Set([`127.0.0.1:${port}`, `localhost:${port}`]);

  return {
    port,
    address: `http://127.0.0.1:${port}/start/${session.token}`,
    async close() {
      events.close();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
      await service.close();
    },
  };
}

/** Listens on the wished port, or on any when that one is taken. */
function listen(server: Server, wished: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const tryPort = (port: number) => {
      server.once('error', (thrown: NodeJS.ErrnoException) => {
        if (port !== 0 && (thrown.code === 'EADDRINUSE' || thrown.code === 'EACCES')) tryPort(0);
        else reject(thrown);
      });
      server.listen({ host: '127.0.0.1', port }, () => {
        server.removeAllListeners('error');
        resolve((server.address() as AddressInfo).port);
      });
    };
    tryPort(wished);
  });
}
