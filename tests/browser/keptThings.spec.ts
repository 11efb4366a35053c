import { choose, expect, fixture, opened, test } from './app.ts';
import { openSample } from './screens.ts';

test('a loom is kept with its photograph, and steps of finishing stay ticked', async ({ page }) => {
  await openSample(page);
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('l');
  await page.getByRole('button', { name: 'Keep this loom for other pieces' }).click();
  const photograph = fixture('sequence/seq1.jpg');
  await choose(page, photograph, () => page.getByRole('button', { name: 'Add a photograph of it' }).click());
  await expect(page.getByRole('img', { name: 'Photograph of Notched frame' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('f');
  const step = page.getByRole('checkbox', { name: /^Twine one row above the last pass/ });
  await step.check();
  const kept = page.waitForResponse(/saveProgress/);
  await page.getByRole('checkbox', { name: /^Lay it face down/ }).check();
  await kept;
  await page.reload();
  await page
    .locator('.first-run-recent button, .first-run button')
    .filter({ hasText: /^Harbour lantern/ })
    .first()
    .click();
  await opened(page);
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('f');
  await expect(step).toBeChecked();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('l');
  await expect(page.getByRole('img', { name: 'Photograph of Notched frame' })).toBeVisible();
});

test('re-planning from a check shows what it changes before it is done', async ({ page }) => {
  await openSample(page);
  await page.keyboard.press('Control+4');
  await page.getByRole('button', { name: 'Re-plan the rest' }).click();
  const sheet = page.getByRole('dialog', { name: 'Re-plan the rest' });
  await expect(sheet).toBeVisible();
  // Nothing has changed yet: there is nothing to take back.
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await sheet.getByRole('textbox').fill('1.2');
  await page.keyboard.press('Enter');
  await expect(sheet.getByRole('row', { name: /^Whole cloth/ })).toBeVisible();
  await sheet.getByRole('button', { name: 'Plan it anew' }).click();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
});

test('a shape is mirrored in a slanting line, and copies go down to the left', async ({ page }) => {
  await openSample(page);
  await page.keyboard.press('Control+2');
  await page.locator('.cartoon-rulers').waitFor();
  await page.keyboard.press('n');
  await page.getByRole('button', { name: 'More for this shape' }).click();
  await page.getByRole('button', { name: 'Mirror in a slanting line' }).click();
  await page.getByRole('textbox', { name: 'Slant, in degrees' }).fill('45');
  await page.keyboard.press('Enter');
  await expect(page.locator('.mirror-line')).toBeAttached();
  await page.getByRole('button', { name: 'Put the image there' }).click();
  await expect(page.locator('.mirror-line')).toHaveCount(0);
  await expect(page.getByRole('heading', { level: 1, name: 'Flame 2' })).toBeVisible();
  await page.getByRole('button', { name: 'More for this shape' }).click();
  await page.getByRole('textbox', { name: 'Copies beside it' }).fill('1');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'Copies go' }).selectOption('left');
  await page.getByRole('button', { name: 'Make the copies shapes of their own' }).click();
  await expect(page.locator('.shape-row').filter({ hasText: 'Flame 3' })).toBeVisible();
});
