import { copyFileSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, fixture, measured, opened, test } from './app.ts';
import { openSample } from './screens.ts';

const loomCheck = /^Check \d+ ·/;

test('the tour goes through the five screens by Enter alone, and is not offered twice', async ({ page }) => {
  await page.getByRole('button', { name: /shown round/ }).focus();
  await page.keyboard.press('Enter');
  await opened(page);
  const tour = page.getByRole('complementary', { name: 'The tour' });
  for (const [at, word] of ['Piece', 'Cartoon', 'Order of work', 'Loom check', 'Record'].entries()) {
    await expect(tour).toContainText(`${at + 1} of 5`);
    await expect(page.locator('[aria-current="page"]')).toHaveText(new RegExp(`^${word}`));
    await page.keyboard.press('Enter');
  }
  await expect(tour).toHaveCount(0);
  // Settings are on their way to the disk; the page that is loaded again must find them there.
  await page.reload();
  await expect(page.getByRole('button', { name: /Look round “Harbour/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /shown round/ })).toHaveCount(0);
});

test('the tour is left by Esc on any screen, and goes along when the bar is used', async ({ page }) => {
  await page.getByRole('button', { name: /shown round/ }).click();
  const tour = page.getByRole('complementary', { name: 'The tour' });
  await expect(tour).toContainText('1 of 5');
  await page.getByRole('button', { name: 'Order of work' }).click();
  await expect(tour).toContainText('3 of 5');
  await page.keyboard.press('Escape');
  await expect(tour).toHaveCount(0);
  // A flag of the newest check is marked on every screen, and on none of a piece without checks.
  const waiting = page.getByRole('button', { name: /^Loom check\s*, a flag is waiting$/ });
  await expect(waiting).toBeVisible();
  await page.getByRole('button', { name: 'Harbour lantern: list of pieces' }).click();
  await page.getByRole('button', { name: 'Make a copy for the next piece' }).click();
  await page.getByRole('button', { name: 'Harbour lantern, next: list of pieces' }).waitFor();
  await expect(waiting).toHaveCount(0);
});

test('a question mark shows the keys of every screen, and the report can be copied', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.keyboard.press('?');
  const sheet = page.getByRole('dialog', { name: 'Words and keys' });
  for (const title of ['Everywhere', 'Piece', 'Cartoon', 'Order of work', 'Bench', 'Loom check', 'Record']) {
    await expect(sheet.getByRole('region', { name: title })).toBeAttached();
  }
  await sheet.getByRole('button', { name: 'Show the report' }).click();
  const report = await sheet.getByRole('textbox', { name: /report/ }).inputValue();
  expect(report).toMatch(/^Plumbweft \d+\.\d+\.\d+/);
  await sheet.getByRole('button', { name: 'Copy it' }).click();
  await expect(sheet.getByRole('status')).toContainText('It is copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(report);
});

test('a picture to share has the figures in it and nothing of the camera', async ({ page }) => {
  await openSample(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(loomCheck)).toBeVisible();
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('g')]);
  expect(download.suggestedFilename()).toBe('harbour-lantern-4.jpg');
  const bytes = readFileSync(await download.path());
  const image = sharp(bytes);
  const { width, height, format, exif, icc, iptc, xmp } = await image.metadata();
  expect({ format, exif, iptc, xmp }).toEqual({ format: 'jpeg', exif: undefined, iptc: undefined, xmp: undefined });
  expect(icc === undefined || icc.length < 10_000).toBe(true);
  expect(height).toBeGreaterThan(width);
  // The strip below the photograph: the sheet's own ground, with words in ink on it.
  const { data } = await sharp(bytes)
    .extract({ left: 0, top: height - 300, width, height: 300 })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const dark = data.filter((light) => light < 90).length / data.length;
  expect(dark).toBeGreaterThan(0.005);
  expect(dark).toBeLessThan(0.2);
  // The bright heart of the cloth's line is nowhere in the photograph itself.
  const whole = await sharp(bytes).removeAlpha().raw().toBuffer();
  let bright = 0;
  for (let at = 0; at < whole.length; at += 3) {
    const [red, green, blue] = [whole[at]!, whole[at + 1]!, whole[at + 2]!];
    if (Math.abs(red - 255) < 12 && Math.abs(green - 176) < 14 && Math.abs(blue - 58) < 30) bright++;
  }
  expect(bright).toBeGreaterThan(1_000);
});

test('a photograph of the piece that has no check yet is found, and measured', async ({ page }) => {
  await openSample(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(loomCheck)).toBeVisible();
  await page.keyboard.press('h');
  await page.getByRole('button', { name: /stage 5.*not measured yet/ }).click();
  await measured(page);
  await expect(page.getByText(/Not kept yet/)).toBeVisible();
});

test('a photograph that arrives in a watched folder is measured by itself', async ({ page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'plumbweft-watched-'));
  const small = join(mkdtempSync(join(tmpdir(), 'plumbweft-phone-')), 'IMG_0001.jpg');
  await sharp(fixture('sequence/seq3.jpg')).resize({ width: 1080 }).jpeg({ quality: 92 }).toFile(small);
  await openSample(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(loomCheck)).toBeVisible();
  await page.keyboard.press('w');
  await page.keyboard.type(folder);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  copyFileSync(small, join(folder, 'IMG_0001.jpg'));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Reading the photograph.', { timeout: 20_000 });
  await measured(page);
  await expect(page.getByText(/mm in/).first()).toBeVisible();
});

test.describe('on a computer that speaks German', () => {
  test.use({ locale: 'de-DE' });

  test('a first start does so too, and English once chosen stays', async ({ page }) => {
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Noch nichts auf dem Rahmen.');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    await page.getByRole('radio', { name: 'English' }).click();
    await page.reload();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing on the loom yet.');
  });
});

test('the language is chosen in view: in the bar before a piece is open, at the top of the sheet of keys after', async ({
  page,
}) => {
  const inView = (name: string) => expect(page.getByRole('radio', { name })).toBeInViewport({ ratio: 1 });
  await inView('Deutsch');
  await page.getByRole('radio', { name: 'Deutsch' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Noch nichts auf dem Rahmen.');
  await openSample(page);
  await expect(page.getByRole('radio', { name: 'English' })).toHaveCount(0);
  for (const screen of ['1', '2', '3', '4', '5']) {
    await page.keyboard.press(`Control+${screen}`);
    await page.keyboard.press('F1');
    await inView('English');
    await page.keyboard.press('Escape');
  }
});
