import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Settings } from '../../src/core/contract/hostApi.ts';
import { projectRoot } from '../support/pieces.ts';
import { type Stubbed, startStubbed } from '../support/stubbedElectron/startStubbed.ts';

const page = 'app://plumbweft/';

describe('the built main bundle over a stand-in for Electron', () => {
  let main: Stubbed;
  let home: string;
  beforeAll(() => {
    home = mkdtempSync(join(tmpdir(), 'plumbweft-test-'));
    main = startStubbed(home);
  });
  afterAll(() => {
    main.stop();
    rmSync(home, { recursive: true, force: true });
  });

  test('opens one window without Node, isolated and in a sandbox, on its own protocol', async () => {
    const window = await main.ask<{ webPreferences: Record<string, unknown>; url: string; count: number }>('window');
    expect(window.count).toBe(1);
    expect(window.url).toBe(page);
    expect(window.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      navigateOnDragDrop: false,
      devTools: false,
    });
    const preload = String(window.webPreferences.preload);
    expect(preload).toMatch(/preload\.cjs$/);
    expect(existsSync(preload)).toBe(true);
    expect(await main.ask('app')).toMatchObject({
      sandbox: true,
      quits: 0,
      menus: 1,
      listeners: [1, 1],
      schemes: [{ scheme: 'app', privileges: { standard: true, secure: true } }],
    });
  });

  test('serves the page with a strict policy, and nothing beside it', async () => {
    const index = await main.ask<{ status: number; headers: Record<string, string>; start: string }>('fetch', {
      url: page,
    });
    expect(index.status).toBe(200);
    expect(index.start).toMatch(/<!doctype html>/i);
    const policy = index.headers['content-security-policy']!;
    for (const rule of [
      "default-src 'none'",
      "script-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
    ]) {
      expect(policy).toContain(rule);
    }
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(index.headers['x-content-type-options']).toBe('nosniff');
    for (const url of [
      `${page}../main/main.js`,
      `${page}..%2fmain%2fmain.js`,
      `${page}%2e%2e/main/main.js`,
      `${page}assets/../../main/main.js`,
      `${page}/etc/passwd`,
      `${page}..\\main\\main.js`,
      `${page}assets`,
      `${page}assets/`,
      `${page}package.json`,
      `${page}toString`,
      `${page}__proto__`,
    ]) {
      expect({ url, ...(await main.ask<{ status: number }>('fetch', { url })) }).toMatchObject({ url, status: 404 });
    }
    for (const url of [
      'app://elsewhere/index.html',
      'app://plumbweft.evil/',
      'app://plumbweft',
      'file:///etc/passwd',
    ]) {
      expect({ url, ...(await main.ask<{ status: number }>('fetch', { url })) }).toMatchObject({ url, status: 403 });
    }
    expect(await main.ask('fetch', { url: page, method: 'POST' })).toMatchObject({ status: 403 });
  });

  test('gives the camera and copying of words to its own page, and nothing else to anybody', async () => {
    const video = { mediaTypes: ['video'] };
    expect(await main.ask('ask', { permission: 'media', url: page, details: video })).toEqual({
      request: true,
      check: true,
    });
    expect(
      await main.ask('check', { permission: 'media', origin: 'app://plumbweft', details: { mediaType: 'video' } }),
    ).toBe(true);
    const copying = { permission: 'clipboard-sanitized-write' };
    expect(await main.ask('ask', { ...copying, url: page })).toEqual({ request: true, check: true });
    const refusals = [
      { ...copying, url: 'https://example.org/', details: {} },
      { ...copying, url: 'app://plumbweft.evil/', details: {} },
      { permission: 'media', url: page, details: { mediaTypes: ['audio'] } },
      { permission: 'media', url: page, details: { mediaTypes: ['video', 'audio'] } },
      { permission: 'media', url: page, details: {} },
      { permission: 'media', url: 'app://plumbweft.evil/', details: video },
      { permission: 'media', url: 'file:///x', details: video },
      { permission: 'media', url: 'https://example.org/', details: video },
      ...[
        'geolocation',
        'notifications',
        'clipboard-read',
        'midi',
        'hid',
        'serial',
        'usb',
        'display-capture',
        'openExternal',
        'fileSystem',
      ].map((permission) => ({ permission, url: page, details: video })),
    ];
    for (const refusal of refusals) {
      expect({ refusal, answer: await main.ask('ask', refusal) }).toEqual({
        refusal,
        answer: { request: false, check: false },
      });
    }
    expect(await main.ask('device')).toBe(false);
  });

  test('asks nothing of the network', async () => {
    for (const url of [
      'https://example.org/x.js',
      'http://127.0.0.1:80/',
      'file:///etc/passwd',
      'ws://example.org/',
      'app://other/x',
    ]) {
      expect({ url, cancel: await main.ask('request', { url }) }).toEqual({ url, cancel: true });
    }
    for (const url of [page, `${page}assets/x.js`, 'blob:app://plumbweft/1234', 'data:image/png;base64,AA']) {
      expect({ url, cancel: await main.ask('request', { url }) }).toEqual({ url, cancel: false });
    }
  });

  test('stays on its page: no navigation, no windows, no embedded pages', async () => {
    for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      expect(await main.ask('navigate', { event, url: 'https://example.org/' })).toBe(true);
      expect(await main.ask('navigate', { event, url: 'file:///etc/passwd' })).toBe(true);
      expect(await main.ask('navigate', { event, url: 'app://plumbweft.evil/' })).toBe(true);
      expect(await main.ask('navigate', { event, url: `${page}index.html` })).toBe(false);
    }
    expect(await main.ask('open', { url: page })).toEqual({ action: 'deny' });
    expect(await main.ask('webview')).toBe(true);
  });

  test('answers only the main frame of its own page', async () => {
    const about = { name: 'about', params: {} };
    expect(await main.ask('call', about)).toMatchObject({ ok: true, result: { shell: 'electron' } });
    for (const sender of [
      { url: 'https://example.org/' },
      { url: 'file:///x.html' },
      { url: 'app://plumbweft.evil/' },
      { url: '' },
      { nested: true },
      { detached: true },
    ]) {
      expect({ sender, ...(await main.ask<object>('call', { ...about, ...sender })) }).toMatchObject({
        sender,
        ok: false,
        tag: 'not-allowed',
      });
    }
  });

  test('checks every name and parameter', async () => {
    const asked = async (call: object) => (await main.ask<{ tag?: string }>('call', call)).tag;
    expect(await asked({ name: 'nothing-like-it', params: {} })).toBe('not-a-call');
    expect(await asked({ name: '__proto__', params: {} })).toBe('not-a-call');
    expect(await asked({ name: 'constructor', params: {} })).toBe('not-a-call');
    expect(await asked({ name: 5, params: {} })).toBe('not-as-agreed');
    expect(await asked({ name: 'about', params: { more: 1 } })).toBe('not-as-agreed');
    expect(await asked({ name: 'about', params: {}, bytes: [1, 2] })).toBe('not-as-agreed');
    expect(await asked({ name: 'about', params: {}, noBytes: true })).toBe('not-as-agreed');
    expect(await asked({ name: 'openPiece', params: { key: '../../etc' } })).toBe('not-as-agreed');
    expect(await asked({ name: 'openPiece', params: { key: 'p-none' } })).toBe('not-there');
    expect(await asked({ name: 'photoImage', params: { key: 'p-none', job: 'j', hash: '../x', size: 'full' } })).toBe(
      'not-as-agreed',
    );
    expect(await asked({ name: 'savePiece', params: { key: 'p-none', revision: 1, piece: { name: 'x' } } })).toBe(
      'not-as-agreed',
    );
  });

  test('opens the sample and keeps it, through the same door', async () => {
    const opened = await main.ask<{ result: { key: string; revision: number; piece: object } }>('call', {
      name: 'openSample',
      params: {},
    });
    expect(opened.result).toMatchObject({ revision: 1, sample: true, readOnly: null });
    const { key, piece } = opened.result;
    expect(await main.ask('call', { name: 'savePiece', params: { key, revision: 1, piece } })).toMatchObject({
      ok: true,
      result: { revision: 2 },
    });
    expect(existsSync(join(projectRoot, 'resources/sample/piece/.lock'))).toBe(false);
  });

  test('puts a piece of the weaver’s own into the system’s list of recent documents, the sample not', async () => {
    expect(await main.ask('recent')).toEqual([]);
    const { result } = await main.ask<{ result: { key: string } }>('call', { name: 'openSample', params: {} });
    const copy = { name: 'duplicatePiece', params: { key: result.key, name: 'Second go' } };
    expect(await main.ask('call', copy)).toMatchObject({ ok: true });
    expect(await main.ask('recent')).toEqual([expect.stringMatching(/Second[ -]go$/i)]);
  });
});

test('a first start speaks the system’s language, in the window and in the menu, which then follows the weaver’s', async () => {
  const home = mkdtempSync(join(tmpdir(), 'plumbweft-test-'));
  const german = startStubbed(home, { STUB_LANGUAGES: 'de-AT,en' });
  const { result } = await german.ask<{ result: Settings }>('call', { name: 'readSettings', params: {} });
  expect(result).toMatchObject({ language: 'de' });
  expect(await german.ask('menu')).toEqual(expect.arrayContaining(['&Stück', '&Hilfe']));
  const keep = (part: Partial<Settings>) =>
    german.ask('call', { name: 'writeSettings', params: { ...result, ...part } });
  const menus = async () => (await german.ask<{ menus: number }>('app')).menus;
  await keep({ theme: 'dark' });
  expect(await menus()).toBe(1);
  await keep({ language: 'en' });
  expect(await german.ask('menu')).toEqual(expect.arrayContaining(['&Piece', '&Help']));
  expect(await menus()).toBe(2);
  german.stop();
  rmSync(home, { recursive: true, force: true });
});

test('a second start opens no window and ends', async () => {
  const home = mkdtempSync(join(tmpdir(), 'plumbweft-test-'));
  const second = startStubbed(home, { STUB_SECOND: '1' });
  expect(await second.ask('app')).toMatchObject({ quits: 1 });
  expect(await second.ask('window')).toMatchObject({ count: 0 });
  second.stop();
  rmSync(home, { recursive: true, force: true });
});
