/**
 * Takes the pictures of the screens in docs/ anew, from the sample piece in the built page:
 *   npm run build && npx tsx scripts/pictures/takeScreens.ts
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium } from '@playwright/test';
import config from '../../playwright.config.ts';
import { startApp } from '../../tests/browser/app.ts';

const docs = resolve(import.meta.dirname, '../../docs');
/** So many turns stand woven in the pictures of the order and the bench: half-way up the lantern's foot. */
const WOVEN = 135;

const home = mkdtempSync(join(tmpdir(), 'plumbweft-screens-'));
const { address, process: host } = await startApp(home);
const browser = await chromium.launch(config.use?.launchOptions);
const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, colorScheme: 'light' });
const take = async (name: string): Promise<void> => {
  // Pictures and the bob come to rest.
  await page.waitForTimeout(800);
  await page.screenshot({ path: join(docs, `${name}.png`) });
};
try {
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('l');
  await page.locator('.bar-undo').waitFor();
  await page.locator('.weft-list').waitFor();
  await take('piece');
  await page.keyboard.press('Control+2');
  await page.locator('.cartoon-rulers').waitFor();
  await page.locator('.shape-row', { hasText: 'Lantern' }).click();
  await take('cartoon');
  await page.keyboard.press('Control+3');
  await page.locator('[data-main-action][aria-disabled="false"]').click();
  for (let turn = 0; turn < WOVEN; turn++) {
    const before = await page.locator('.bench').textContent();
    await page.keyboard.press('Space');
    await page.waitForFunction((text) => document.querySelector('.bench')?.textContent !== text, before);
  }
  await take('bench');
  await page.keyboard.press('Escape');
  await page.locator('.cloth-picture').waitFor();
  await take('order-of-work');
  await page.keyboard.press('Control+4');
  await page.locator('.check-cell image').first().waitFor({ state: 'attached', timeout: 90_000 });
  await take('loom-check');
  await page.keyboard.press('Control+5');
  await page.locator('.compare-slide image').first().waitFor({ state: 'attached', timeout: 90_000 });
  await take('record');
} finally {
  await browser.close();
  host.kill('SIGTERM');
  rmSync(home, { recursive: true, force: true });
}
