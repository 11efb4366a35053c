import type { Page } from '@playwright/test';
import { choose, expect, opened, test } from './app.ts';

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** A new piece in inches, on Piece. */
async function inInches(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'in', exact: true }).click();
  await page.keyboard.press('n');
  await page.locator('.weft-list').waitFor();
}

test('a new piece in inches shows what to buy in full, and refuses a cloth of no width', async ({ page }) => {
  await inInches(page);
  const figures = page.locator('.weft-list .weft-figure');
  await expect(figures.nth(1)).toHaveText(/^about [\d.]+ g$/);
  const room = (await page.locator('.weft-list').boundingBox())!;
  for (const figure of await figures.all()) {
    expect(await figure.evaluate((words) => words.scrollWidth - words.clientWidth)).toBeLessThanOrEqual(0);
    const box = (await figure.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(room.x + room.width + 0.5);
  }
  const width = field(page, 'Width of the cloth');
  await width.fill('0');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('That is less than two ends. The narrowest is ½ in.');
  await page.keyboard.press('Escape');
  await expect(width).toHaveValue('8 ¼ in');
  // What was refused is forgotten once the old size is typed over it.
  await width.fill('99999');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText('wider than the loom takes');
  await width.fill('8 ¼ in');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a piece changed in another window is opened again where it could not be saved', async ({
  page,
  context,
  app,
}) => {
  await inInches(page);
  const other = await context.newPage();
  other.on('filechooser', () => undefined);
  await other.goto(app.address);
  await other.locator('.first-run-recent button').first().click();
  await other.locator('.weft-list').waitFor();
  const saved = other.waitForResponse(/savePiece/);
  await field(other, 'Width of the cloth').fill('6');
  await other.keyboard.press('Enter');
  await saved;
  await field(page, 'Height of the cloth').fill('7');
  await page.keyboard.press('Enter');
  const trouble = page.getByRole('contentinfo').getByRole('alert');
  await expect(trouble).toContainText('changed by another Plumbweft');
  await trouble.getByRole('button', { name: 'Open it again' }).click();
  await expect(field(page, 'Width of the cloth')).toHaveValue('6 in');
  await expect(trouble).toHaveCount(0);
  // From here it is saved as ever.
  const savedHere = page.waitForResponse(/savePiece/);
  await field(page, 'Height of the cloth').fill('7');
  await page.keyboard.press('Enter');
  await savedHere;
  await expect(trouble).toHaveCount(0);
  await expect(field(page, 'Height of the cloth')).toHaveValue('7 in');
});

test('a piece brought in beside itself is told from it in the lists', async ({ page }) => {
  await inInches(page);
  await page.keyboard.press('Control+5');
  const [packed] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Keep as one file' }).click(),
  ]);
  const path = await packed.path();
  await choose(page, path, () => page.getByRole('button', { name: 'Open a file' }).click());
  await page.locator('.weft-list').waitFor();
  await opened(page);
  await page.keyboard.press('Control+o');
  const rows = page.getByRole('dialog').getByRole('listitem').filter({ hasText: 'check' });
  await expect(rows).toHaveCount(1);
  await expect(rows).toHaveText(/New[ -]piece.*New[ -]piece · 0 checks/);
});
