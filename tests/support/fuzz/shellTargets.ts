import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve, sep } from 'node:path';
import type { IpcMain } from 'electron';
import { packEnvelope } from '../../../src/core/contract/envelope.ts';
import { answerCalls } from '../../../src/main/electron/answerCalls.ts';
import type { FileLayer } from '../../../src/main/files/fileLayer.ts';
import { nodeFiles } from '../../../src/main/files/nodeFiles.ts';
import { startLocalHost } from '../../../src/main/local/localHost.ts';
import { openLog } from '../../../src/main/log/log.ts';
import { findPlaces } from '../../../src/main/service/places.ts';
import { realStorePorts } from '../../../src/main/service/realPorts.ts';
import { createService, type HostService } from '../../../src/main/service/service.ts';
import { thisProcess } from '../../../src/main/store/thisProcess.ts';
import { openLocalPage } from '../callLocal.ts';
import { lantern, projectRoot } from '../pieces.ts';
import { mutateBytes, type Pick } from './mutate.ts';
import { type FuzzTarget, randomCall } from './targets.ts';

/** A whole service whose writes are watched: any outside its own home is a finding. */
function watchedService(home: string): { readonly service: HostService; readonly outside: string[] } {
  const outside: string[] = [];
  const look = (path: string) => {
    if (!resolve(path).startsWith(home + sep)) outside.push(path);
  };
  const files: FileLayer = {
    ...nodeFiles,
    create: (path) => {
      look(path);
      return nodeFiles.create(path);
    },
    rename: (from, to) => {
      look(from);
      look(to);
      return nodeFiles.rename(from, to);
    },
    remove: (path) => {
      look(path);
      return nodeFiles.remove(path);
    },
    makeFolder: (path) => {
      look(path);
      return nodeFiles.makeFolder(path);
    },
  };
  const places = findPlaces(projectRoot, home);
  const service = createService({
    store: { ...realStorePorts(), files },
    owner: thisProcess('fuzz'),
    places,
    worker: { path: join(home, 'no-worker.mjs'), seconds: 2 },
    shell: {
      name: 'local',
      version: '0',
      why: 'fuzz',
      languages: () => [],
      chooseFolder: null,
      chooseSaveFile: null,
      reveal: null,
      opened: null,
    },
    log: openLog(join(home, 'log'), () => new Date()),
    tell: () => undefined,
  });
  return { service, outside };
}

const newHome = () => mkdtempSync(join(tmpdir(), 'plumbweft-fuzz-'));

/** Calls as a page makes them through Electron: who asks, what, and with which bytes, all at random. */
export async function callTarget(): Promise<FuzzTarget> {
  const home = newHome();
  const { service, outside } = watchedService(home);
  const made = await service.call('createPiece', { piece: lantern() }, null);
  const key = made.ok ? (made.value.result as { key: string }).key : 'p-1';
  let handler: ((event: unknown, ...given: unknown[]) => Promise<unknown>) | null = null;
  answerCalls(
    { handle: (_channel: string, given: typeof handler) => (handler = given) } as unknown as IpcMain,
    service,
  );
  const senders = ['app://plumbweft/', 'app://plumbweft/', 'app://plumbweft/', 'https://example.org/', ''];
  return {
    name: 'call',
    share: 10_000,
    make(pick: Pick) {
      const { name, params, bytes } = randomCall(pick);
      const real = pick(2) === 0 && typeof params === 'object' && params !== null ? { ...params, key } : params;
      return packEnvelope({ sender: senders[pick(senders.length)], name, params: real ?? null }, bytes);
    },
    async run(input) {
      const { sender, name, params, bytes } = readCall(input);
      const outcome = (await handler?.({ senderFrame: { url: sender, parent: null } }, name, params, bytes)) as {
        ok: boolean;
        problem?: { tag: string; sentence: string };
      };
      if (outside.length > 0) return `wrote outside its home: ${outside[0]}`;
      if (!sender.startsWith('app://plumbweft/') && outcome.ok) return 'answered a stranger';
      if (outcome.ok) return null;
      if (outcome.problem?.tag === 'internal') return `unexpected: ${JSON.stringify(outcome.problem)} for ${name}`;
      return outcome.problem?.sentence ? null : 'a problem without words';
    },
  };
}

function readCall(input: Uint8Array) {
  const length = new DataView(input.buffer, input.byteOffset, input.byteLength).getUint32(0);
  const json = JSON.parse(new TextDecoder().decode(input.subarray(5, 5 + length))) as {
    sender: string;
    name: string;
    params: unknown;
  };
  return { ...json, bytes: input[4] === 1 ? input.subarray(5 + length) : null };
}

/** Bytes on the local host's socket: requests of every kind, changed at random, some with the right cookie. */
export async function requestTarget(): Promise<FuzzTarget> {
  const home = newHome();
  const page = join(home, 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html>page');
  let outside: string[] = [];
  const host = await startLocalHost({
    page,
    port: 0,
    log: openLog(join(home, 'log'), () => new Date()),
    limits: { burst: 1e9, perSecond: 1e9 },
    service: () => {
      const watched = watchedService(home);
      outside = watched.outside;
      return watched.service;
    },
  });
  const { cookie, base } = await openLocalPage(host.address);
  const call = packEnvelope({}, null);
  const head = (line: string, more: string) =>
    `${line} HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\nCookie: ${cookie}\r\n${more}Connection: close\r\n\r\n`;
  const post = (name: string, body: Uint8Array) =>
    Buffer.concat([
      Buffer.from(
        head(
          `POST /call/${name}`,
          `Origin: ${base}\r\nContent-Type: application/octet-stream\r\nContent-Length: ${body.length}\r\n`,
        ),
      ),
      body,
    ]);
  const seeds = [
    Buffer.from(head('GET /', '')),
    Buffer.from(head('GET /assets/../../x', '')),
    Buffer.from(head(`GET ${new URL(host.address).pathname}`, '')),
    post('about', call),
    post('readSettings', call),
    post('recentPieces', call),
    post('importPiece', packEnvelope({ name: 'x.zip' }, Buffer.from('PK'))),
  ];
  const send = (bytes: Uint8Array) =>
    new Promise<string>((done, fail) => {
      const socket = connect({ host: '127.0.0.1', port: host.port });
      let text = '';
      const timer = setTimeout(() => {
        // A request that was cut off waits for its rest; that is the client's doing, and the server's timeouts end it.
        socket.destroy();
        done(text);
      }, 150);
      const end = () => {
        clearTimeout(timer);
        done(text);
      };
      socket.on('data', (data) => {
        text += data.toString('latin1');
      });
      socket.on('close', end);
      socket.on('error', (thrown: NodeJS.ErrnoException) => {
        clearTimeout(timer);
        if (thrown.code === 'ECONNREFUSED') fail(thrown);
        else done(text);
      });
      socket.write(bytes);
    });
  return {
    name: 'request',
    share: 10_000,
    make: (pick: Pick) => mutateBytes(seeds[pick(seeds.length)]!, seeds[pick(seeds.length)]!, pick),
    async run(input) {
      const answered = await send(input);
      if (outside.length > 0) return `wrote outside its home: ${outside[0]}`;
      const status = Number(/^HTTP\/1\.1 (\d+)/.exec(answered)?.[1] ?? 0);
      if (status === 500) return 'answered with 500';
      return null;
    },
  };
}
