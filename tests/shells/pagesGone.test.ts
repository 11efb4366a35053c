import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { startLocalHost } from '../../src/main/local/localHost.ts';
import { openLog } from '../../src/main/log/log.ts';
import { openLocalPage } from '../support/callLocal.ts';
import { serviceForTest } from '../support/serviceForTest.ts';

/** Whether any piece under `folder` is held for writing. */
const isHeld = (folder: string): boolean =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).some((name) => /(^|[\\/])\.lock$/.test(name));

test('a piece is let go when no page listens any more, and kept through a short gap', async () => {
  const home = mkdtempSync(join(tmpdir(), 'plumbweft-test-'));
  const built = join(home, 'page');
  mkdirSync(built);
  writeFileSync(join(built, 'index.html'), '<!doctype html><title>page</title>');
  const host = await startLocalHost({
    page: built,
    port: 0,
    log: openLog(join(home, 'log'), () => new Date()),
    goneAfterMs: 400,
    service: (tell) => serviceForTest(home, tell).service,
  });
  onTestFinished(async () => {
    await host.close();
    rmSync(home, { recursive: true, force: true });
  });
  const page = await openLocalPage(host.address);
  const listen = async () => {
    const leave = new AbortController();
    await page.request('/events', { signal: leave.signal });
    return () => leave.abort();
  };
  const leaveFirst = await listen();
  const opened = await page.call('openSample', {});
  expect(opened.json.ok).toBe(true);
  expect(existsSync(home) && isHeld(home)).toBe(true);
  leaveFirst();
  const leaveSecond = await listen();
  await new Promise((done) => setTimeout(done, 700));
  expect(isHeld(home)).toBe(true);
  leaveSecond();
  await vi.waitFor(() => expect(isHeld(home)).toBe(false), { timeout: 5_000 });
  // Opened again, it can be written as before.
  await listen();
  const again = await page.call('openSample', {});
  expect(again.json.value?.readOnly).toBeNull();
});
