// Loads the built main bundle over the stand-in and answers the questions of the test, one JSON line each.
import { resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';

const root = resolve(import.meta.dirname, '../../..');
const bundle = process.env.PLUMBWEFT_BUNDLE ?? resolve(root, 'out');
await import(pathToFileURL(resolve(bundle, 'main/main.js')).href);
await new Promise((later) => setTimeout(later, 150));
const { stubbed } = globalThis;
const page = 'app://plumbweft/';
const prevented = (emitter, event, details) => {
  let stopped = false;
  const preventDefault = () => (stopped = true);
  if (typeof details === 'string') emitter.emit(event, { preventDefault }, details);
  else emitter.emit(event, { ...details, preventDefault });
  return stopped;
};

const questions = {
  window: () => ({
    ...stubbed.windows[0]?.options,
    url: stubbed.windows[0]?.webContents.url,
    count: stubbed.windows.length,
  }),
  menu: () => stubbed.menus.at(-1).map(({ label }) => label),
  app: () => ({
    sandbox: stubbed.sandbox,
    schemes: stubbed.schemes,
    quits: stubbed.quits,
    menus: stubbed.menus.length,
    listeners: [process.listenerCount('unhandledRejection'), process.listenerCount('uncaughtException')],
  }),
  async fetch({ url, method = 'GET' }) {
    const response = await stubbed.protocol.handler({ url, method });
    const text = await response.text();
    return {
      status: response.status,
      headers: Object.fromEntries(response.headers),
      length: text.length,
      start: text.slice(0, 200),
    };
  },
  ask({ permission, url, details = {} }) {
    let answer = null;
    stubbed.permissionRequest({}, permission, (value) => (answer = value), { requestingUrl: url, ...details });
    return { request: answer, check: stubbed.permissionCheck({}, permission, url, { requestingUrl: url, ...details }) };
  },
  check: ({ permission, origin, details = {} }) => stubbed.permissionCheck({}, permission, origin, details),
  device: () => stubbed.devicePermission({}),
  request({ url }) {
    let cancel = null;
    stubbed.beforeRequest({ url }, (answer) => (cancel = answer.cancel));
    return cancel;
  },
  navigate: ({ event, url }) => prevented(stubbed.windows[0].webContents, event, { url }),
  open: ({ url }) => stubbed.windows[0].webContents.openHandler({ url }),
  /** The system opens a file: by a second start, or as macOS does it. */
  start: ({ argv, folder }) => void stubbed.app.emit('second-instance', {}, argv, folder),
  openFile: ({ path }) => prevented(stubbed.app, 'open-file', path),
  /** What was sent to the page and shown in boxes, once there is some. */
  async heard() {
    for (let look = 0; look < 300 && stubbed.sent.length + stubbed.boxes.length === 0; look++) {
      await new Promise((later) => setTimeout(later, 20));
    }
    return { sent: stubbed.sent.splice(0).map(([, value]) => value), boxes: stubbed.boxes.splice(0) };
  },
  /** The system's own list of what was opened. */
  recent: () => stubbed.recent,
  async reject({ words }) {
    void Promise.reject(new Error(words));
    await new Promise((later) => setTimeout(later, 20));
  },
  throw({ words }) {
    setTimeout(() => {
      throw new Error(words);
    });
  },
  webview: () => prevented(stubbed.windows[0].webContents, 'will-attach-webview', {}),
  async call({ url = page, nested = false, detached = false, name, params, bytes = null, noBytes = false }) {
    const frame = detached ? null : { url, parent: nested ? {} : null };
    const raw = bytes === null ? null : Uint8Array.from(bytes);
    const outcome = await stubbed.ipc.handler({ senderFrame: frame }, name, params, noBytes ? 'text' : raw);
    return outcome.ok ? { ok: true, result: outcome.value.result } : { ok: false, tag: outcome.problem.tag };
  },
};

for await (const line of createInterface({ input: process.stdin })) {
  const { ask, ...params } = JSON.parse(line);
  try {
    console.log(JSON.stringify({ answer: (await questions[ask](params)) ?? null }));
  } catch (thrown) {
    console.log(JSON.stringify({ thrown: String(thrown) }));
  }
}
process.exit(0);
