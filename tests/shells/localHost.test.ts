import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as plainRequest } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packEnvelope } from '../../src/core/contract/envelope.ts';
import type { HostEvent } from '../../src/core/contract/hostApi.ts';
import { type LocalHost, startLocalHost } from '../../src/main/local/localHost.ts';
import { openSession } from '../../src/main/local/session.ts';
import { openLog } from '../../src/main/log/log.ts';
import { type LocalPage, openLocalPage } from '../support/callLocal.ts';
import { serviceForTest } from '../support/serviceForTest.ts';

describe('the local host', () => {
  let home: string;
  let host: LocalHost;
  let page: LocalPage;
  let tell: (event: HostEvent) => void;

  beforeAll(async () => {
    home = mkdtempSync(join(tmpdir(), 'plumbweft-test-'));
    const built = join(home, 'page');
    mkdirSync(join(built, 'assets'), { recursive: true });
    writeFileSync(join(built, 'index.html'), '<!doctype html><title>page</title>');
    writeFileSync(join(built, 'assets/app.js'), 'export {};');
    writeFileSync(join(home, 'secret.txt'), 'private');
    host = await startLocalHost({
      page: built,
      port: 0,
      log: openLog(join(home, 'log'), () => new Date()),
      limits: { burst: 300, perSecond: 50 },
      service: (given, languages) => {
        tell = given;
        return serviceForTest(home, given, languages).service;
      },
    });
    page = await openLocalPage(host.address);
  });
  afterAll(async () => {
    await host.close();
    rmSync(home, { recursive: true, force: true });
  });

  /** A request with exactly these headers; `fetch` would set Host itself. */
  const raw = (path: string, headers: Record<string, string>, method = 'GET'): Promise<number> =>
    new Promise((resolve, reject) => {
      const asked = plainRequest({ host: '127.0.0.1', port: host.port, path, method, headers }, (response) => {
        response.resume();
        response.on('end', () => resolve(response.statusCode ?? 0));
      });
      asked.on('error', reject);
      asked.end();
    });
  const status = async (path: string, init: Parameters<LocalPage['request']>[1] = {}) =>
    (await page.request(path, init)).status;
  const post = (headers: Record<string, string>, path = '/call/about', body = packEnvelope({}, null)) =>
    status(path, { method: 'POST', headers, body: body as Uint8Array<ArrayBuffer> });
  const type = { 'content-type': 'application/octet-stream' };

  test('listens on the loopback address only', async () => {
    expect(host.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/start\/[\w-]{43}$/);
    const reached = (address: string) =>
      new Promise<boolean>((resolve) => {
        const socket = connect({ host: address, port: host.port });
        const end = (answered: boolean) => {
          socket.destroy();
          resolve(answered);
        };
        socket.on('connect', () => end(true));
        socket.on('error', () => end(false));
        setTimeout(() => end(false), 1_000);
      });
    expect(await reached('127.0.0.1')).toBe(true);
    // On Linux 127.0.0.2 is this computer too, and answers whoever listens everywhere.
    const others = Object.values(networkInterfaces()).flatMap((one) => one ?? []);
    for (const address of [
      '127.0.0.2',
      '::1',
      ...others.filter(({ internal }) => !internal).map(({ address }) => address),
    ]) {
      expect({ address, reached: await reached(address) }).toEqual({ address, reached: false });
    }
  });

  test('a first start speaks the language the browser asks for', async () => {
    const spoken = async (asked: string) => {
      await status('/', { headers: { 'accept-language': asked } });
      const { json } = await page.call('readSettings', {});
      return (json.value as { language: string }).language;
    };
    expect(await spoken('de-CH,de;q=0.9,en;q=0.8')).toBe('de');
    expect(await spoken('fr,en;q=0.8')).toBe('en');
  });

  test('makes a token and a cookie that nobody can know beforehand', () => {
    const [one, other] = [openSession(1), openSession(1)];
    expect(one.token).not.toBe(other.token);
    expect(one.setCookie).not.toBe(other.setCookie);
    expect(one.setCookie).not.toContain(one.token);
    for (const { token } of [one, other]) expect(Buffer.from(token, 'base64url')).toHaveLength(32);
  });

  test('sets its cookie for whoever has the address, out of reach of scripts and other sites', async () => {
    const first = await fetch(host.address, { redirect: 'manual' });
    expect(first.status).toBe(303);
    expect(first.headers.get('location')).toBe('/');
    expect(first.headers.get('set-cookie')).toMatch(
      new RegExp(`^plumbweft-${host.port}=[\\w-]{43}; HttpOnly; SameSite=Strict; Path=/$`),
    );
  });

  test('turns away a wrong host, a wrong origin, a missing or wrong cookie', async () => {
    const { cookie } = page;
    const own = `127.0.0.1:${host.port}`;
    expect(await raw('/', { host: 'evil.example', cookie })).toBe(421);
    expect(await raw('/', { host: `evil.example:${host.port}`, cookie })).toBe(421);
    expect(await raw('/', { host: '127.0.0.1', cookie })).toBe(421);
    expect(await raw(new URL(host.address).pathname, { host: 'evil.example' })).toBe(421);
    expect(await raw('/', { host: own })).toBe(401);
    expect(await raw('/', { host: own, cookie: cookie.replace(/.$/, '~') })).toBe(401);
    expect(await raw('/', { host: own, cookie: cookie.replace('=', '2=') })).toBe(401);
    expect(await raw('/start/wrong', { host: own })).toBe(401);
    expect(await raw('/events', { host: own })).toBe(401);
    expect(await raw('/call/about', { host: own, origin: `http://${own}` }, 'POST')).toBe(401);
    expect(await raw('/', { host: own, cookie })).toBe(200);
    expect(await post({ ...type, origin: 'https://evil.example' })).toBe(403);
    expect(await post({ ...type, origin: `http://127.0.0.1:${host.port + 1}` })).toBe(403);
    expect(await post({ ...type, origin: 'null' })).toBe(403);
    expect(await post({ ...type })).toBe(403);
    expect(await post({ ...type, origin: page.base })).toBe(200);
  });

  test('lets no other site read from it', async () => {
    for (const site of ['cross-site', 'same-site']) {
      expect(await post({ ...type, origin: page.base, 'sec-fetch-site': site })).toBe(403);
    }
    expect(
      await status('/assets/app.js', { headers: { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' } }),
    ).toBe(403);
    const { headers } = await page.request('/');
    expect(headers.get('access-control-allow-origin')).toBeNull();
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    expect(headers.get('x-frame-options')).toBe('DENY');
  });

  test('serves its page by a list, with a strict policy; nothing else and no listing', async () => {
    const index = await page.request('/');
    expect(await index.text()).toContain('<title>page</title>');
    const policy = index.headers.get('content-security-policy')!;
    for (const rule of [
      "default-src 'none'",
      "script-src 'self'",
      "connect-src 'self'",
      "frame-ancestors 'none'",
      "base-uri 'none'",
      "style-src 'self'",
      "worker-src 'self'",
      "form-action 'none'",
      "object-src 'none'",
    ]) {
      expect(policy).toContain(rule);
    }
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(await status('/assets/app.js')).toBe(200);
    const own = { host: `127.0.0.1:${host.port}`, cookie: page.cookie };
    for (const path of [
      '/assets',
      '/assets/',
      '/../secret.txt',
      '/..%2fsecret.txt',
      '/%2e%2e/secret.txt',
      '/assets/../../secret.txt',
      '//secret.txt',
      '/secret.txt',
      '/toString',
      '/assets\\..\\..\\secret.txt',
    ]) {
      expect({ path, status: await raw(path, own) }).toEqual({ path, status: 404 });
    }
  });

  test('takes calls in one form only', async () => {
    const origin = page.base;
    expect(await status('/call/about')).toBe(405);
    expect(await status('/', { method: 'POST', headers: { origin } })).toBe(405);
    expect(await post({ origin, 'content-type': 'application/json' })).toBe(415);
    expect(await post({ origin, 'content-type': 'text/plain' })).toBe(415);
    const answers = await Promise.all(
      [new Uint8Array(0), new Uint8Array([0, 0, 0, 9, 0]), new Uint8Array([255, 255, 255, 255, 1, 2])].map(
        async (body) =>
          (await page.request('/call/about', { method: 'POST', headers: { ...type, origin }, body })).status,
      ),
    );
    expect(answers).toEqual([200, 200, 200]);
    expect((await page.call('about', { extra: true })).json.problem?.tag).toBe('not-as-agreed');
    expect((await page.call('nothing', {})).json.problem?.tag).toBe('not-a-call');
    expect((await page.call('about', {})).json.value).toMatchObject({ shell: 'local' });
  });

  test('refuses more than a call may carry, without reading it', async () => {
    const length = String(200 * 1024 * 1024);
    const code = await new Promise<number>((resolve, reject) => {
      const asked = plainRequest(
        {
          host: '127.0.0.1',
          port: host.port,
          path: '/call/about',
          method: 'POST',
          headers: {
            host: `127.0.0.1:${host.port}`,
            cookie: page.cookie,
            origin: page.base,
            ...type,
            'content-length': length,
          },
        },
        (response) => resolve(response.statusCode ?? 0),
      );
      asked.on('error', reject);
      asked.write('x');
    });
    expect(code).toBe(413);
  });

  test('stops reading a body that says nothing of its length and goes on and on', async () => {
    const code = await new Promise<number | string>((resolve) => {
      const asked = plainRequest(
        {
          host: '127.0.0.1',
          port: host.port,
          path: '/call/about',
          method: 'POST',
          headers: {
            host: `127.0.0.1:${host.port}`,
            cookie: page.cookie,
            origin: page.base,
            ...type,
            'transfer-encoding': 'chunked',
          },
        },
        (response) => resolve(response.statusCode ?? 0),
      );
      asked.on('error', (thrown: NodeJS.ErrnoException) => resolve(thrown.code ?? 'error'));
      const piece = Buffer.alloc(8 * 1024 * 1024);
      let sent = 0;
      const more = () => {
        if (sent++ > 12) return asked.end();
        asked.write(piece, () => more());
      };
      more();
    });
    expect(['ECONNRESET', 'EPIPE', 413]).toContain(code);
  });

  test('sends events to the page', async () => {
    const response = await page.request('/events');
    expect(response.headers.get('content-type')).toBe('text/event-stream');
    const reader = response.body!.getReader();
    let text = '';
    tell({ kind: 'command', command: 'undo' });
    while (!text.includes('undo')) text += new TextDecoder().decode((await reader.read()).value);
    expect(text).toContain('data: {"kind":"command","command":"undo"}\n\n');
    await reader.cancel();
  });

  // Last, since it uses the allowances up.
  test('slows a page that runs wild, and strangers much sooner', async () => {
    const codes: number[] = [];
    for (let batch = 0; batch < 12; batch++) {
      codes.push(...(await Promise.all(Array.from({ length: 50 }, () => post({ ...type, origin: page.base })))));
    }
    expect(codes).toContain(429);
    const own = { host: `127.0.0.1:${host.port}` };
    const tries: number[] = [];
    for (let guess = 0; guess < 100; guess++) tries.push(await raw(`/start/guess${guess}`, own));
    expect(tries.filter((code) => code === 429).length).toBeGreaterThan(20);
  });
});
