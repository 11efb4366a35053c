import { readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSample } from './screens.ts';

const files = (home: string) => readdirSync(home, { recursive: true, encoding: 'utf8' });
/** The locks of pieces under this home. */
const locks = (home: string) => files(home).filter((name) => /(^|\/)\.lock$/.test(name));

async function loadAgain(page: Page): Promise<void> {
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Nothing on the loom yet.' })).toBeVisible();
}

test('a page that is loaded again lets its piece go', async ({ page, app }) => {
  await openSample(page);
  expect(locks(app.home)).toHaveLength(1);
  await loadAgain(page);
  await expect.poll(() => locks(app.home)).toEqual([]);
});

test('a lock that another computer left behind is explained, and taken over when asked', async ({ page, app }) => {
  await openSample(page);
  await loadAgain(page);
  await expect.poll(() => locks(app.home)).toEqual([]);
  const folder = files(app.home).find((name) => /(^|\/)piece\.json$/.test(name))!;
  const lock = join(app.home, folder, '../.lock');
  const note = { token: 'abc', machine: 'the-studio', boot: 'x', pid: 1, began: '2026-01-01', shell: 'the app' };
  writeFileSync(lock, JSON.stringify(note));
  const longAgo = new Date(Date.now() - 3_600_000);
  utimesSync(lock, longAgo, longAgo);
  expect(statSync(lock).mtimeMs).toBeLessThan(Date.now() - 3_000_000);
  await openSample(page);
  await expect(page.getByText(/left open on the-studio/)).toBeVisible();
  await page.getByRole('button', { name: 'Try to open it for changing' }).click();
  await expect(page.getByText(/left open on the-studio/)).toHaveCount(0);
  expect(locks(app.home)).toHaveLength(1);
});
