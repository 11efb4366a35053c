import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { usualSettings } from '../../src/core/contract/hostApi.ts';
import { serialiseDocument } from '../../src/core/project/document.ts';
import { sha256 } from '../../src/main/files/sha256.ts';
import { settingsDocument } from '../../src/main/service/ownDocuments.ts';
import { test as base, dropPhotograph, expect, fixture, measured, opened, startApp } from './app.ts';
import { trueEdge } from './truth.ts';
import { openOrder, testWithPiece } from './withPiece.ts';

const flag = (page: Page, of: RegExp) => page.getByRole('button', { name: of }).first();
const question = (page: Page) => page.getByRole('region', { name: 'This camera' });

/** A photograph as a camera saves it that turns its pictures over. @param camera its name; null where nothing names it. */
async function turnedOver(folder: string, name: string, camera: string | null): Promise<string> {
  const path = join(folder, `${camera}.jpg`);
  const picture = sharp(fixture(`${name}.jpg`))
    .resize({ height: 1300 })
    .flop()
    .jpeg({ quality: 92 });
  const named = camera === null ? picture : picture.withExif({ IFD0: { Make: 'Looking-glass', Model: camera } });
  await named.toFile(path);
  return path;
}

/** Keeps in a home that pictures which name no camera were once said to show left and right as they are. */
function saidNotTurned(home: string): void {
  const settings = { ...usualSettings, cameras: [{ name: null, mirrors: false }] };
  mkdirSync(join(home, 'data'));
  writeFileSync(join(home, 'data', 'settings.json'), serialiseDocument(settingsDocument, settings, 1, sha256));
}

/** Says on the screen that the camera turns its pictures over; the same photograph is then measured anew. */
async function sayTurned(page: Page): Promise<void> {
  await question(page).getByRole('button', { name: 'It is turned over' }).click();
  await expect(page.getByRole('heading', { name: 'Reading the photograph.' })).toBeVisible();
  await measured(page);
  await expect(question(page)).toHaveCount(0);
}

/** An edge as the table of a check tells it, `0.4 mm in ± 0.3`, in mm out. */
const millimetres = (said: string) => {
  const found = /^([\d.]+) mm(?: (in|out))? ± ([\d.]+)$/.exec(said);
  return found && { out: Number(found[1]) * (found[2] === 'in' ? -1 : 1), sigma: Number(found[3]) };
};

/** Both edges of the check on screen lie where the truth file of the picture, as it was before it was turned, has them. */
async function edgesAsTrue(page: Page, name: string, warp: { ends: number; pitch: number }): Promise<void> {
  await page.keyboard.press('t');
  const table = page.getByRole('dialog');
  await table.getByRole('row').nth(3).waitFor();
  const rows = await table
    .getByRole('row')
    .evaluateAll((all) =>
      all.map((row) => [...row.querySelectorAll('th, td')].map((cell) => (cell.textContent ?? '').replace(/\s/g, ' '))),
    );
  let told = 0;
  let apart = 0;
  for (const [place = '', ...edges] of rows) {
    const height = Number(/^(\d+) mm up$/.exec(place)?.[1]);
    const truths = (['left', 'right'] as const).map((side) => trueEdge(name, side, warp, height));
    for (const at of [0, 1]) {
      const said = millimetres(edges[at] ?? '');
      if (said === null || !Number.isFinite(truths[at])) continue;
      told++;
      const off = Math.abs(said.out - truths[at]!);
      expect({ place, edge: at, off, ok: off < Math.max(0.8, 3 * said.sigma) }).toMatchObject({ ok: true });
      apart = Math.max(apart, Math.abs(truths[0]! - truths[1]!));
    }
  }
  expect(told).toBeGreaterThan(30);
  // Exchanged, they could not lie so.
  expect(apart).toBeGreaterThan(1);
  await page.keyboard.press('Escape');
  await expect(table).toHaveCount(0);
}

const lopsided = testWithPiece({ ...loadPiece(fixture('earlier/p6203-a.brief.json')), name: 'Lopsided' });

lopsided(
  'where left and right differ, a picture that is turned over is noticed though none like it was, and put right by one answer',
  async ({ page, home }) => {
    saidNotTurned(home);
    const app = await startApp(home);
    await openOrder(page, app.address, 'Lopsided');
    await page.keyboard.press('Control+4');
    await dropPhotograph(page, await turnedOver(home, 'earlier/p6203-a', null));
    await expect(page.getByRole('heading', { name: /lie as in a mirror image of the plan/ })).toBeVisible({
      timeout: 120_000,
    });
    await expect(question(page)).toContainText('Does this camera turn its pictures over');
    await sayTurned(page);
    await expect(page.getByText('it is taken to be turned over')).toBeVisible();
    await expect(flag(page, /^Flag \d.*[Ll]eft edge/)).toBeVisible();
    await expect(flag(page, /^Flag \d.*[Rr]ight edge/)).toHaveCount(0);
    await edgesAsTrue(page, 'earlier/p6203-a', { ends: 36, pitch: 5 });
    app.process.kill('SIGTERM');
  },
);

base('where they are alike, one is asked, once for each camera', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'plumbweft-mirrored-'));
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await dropPhotograph(page, await turnedOver(folder, 'sequence/seq3', 'Beta'));
  await measured(page);
  // Nothing is known of the camera yet: what is the right edge stands at the left.
  await expect(flag(page, /^Flag \d.*[Ll]eft edge/)).toBeVisible();
  await expect(question(page)).toContainText('the photograph can’t tell');
  await sayTurned(page);
  await expect(flag(page, /^Flag \d.*[Rr]ight edge/)).toBeVisible();
  await expect(flag(page, /^Flag \d.*[Ll]eft edge/)).toHaveCount(0);
  await edgesAsTrue(page, 'sequence/seq3', { ends: 33, pitch: 6.35 });
  await page.getByRole('button', { name: 'Keep this check' }).click();
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  // The next picture by that camera is put right without a question.
  await dropPhotograph(page, await turnedOver(folder, 'sequence/seq2', 'Beta'));
  await measured(page);
  await expect(page.getByText('Looking-glass Beta turns its pictures over')).toBeVisible();
  await expect(question(page)).toHaveCount(0);
  rmSync(folder, { recursive: true, force: true });
});
