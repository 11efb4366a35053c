import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSample } from './screens.ts';

/** By keys alone: type, look at the row that is marked, press Enter. */
async function find(page: Page, typed: string, marked: string): Promise<void> {
  await page.keyboard.press('Control+k');
  await page.locator('.find-field').waitFor();
  await page.keyboard.type(typed);
  await expect(page.locator('[role="option"][aria-selected="true"]')).toContainText(marked);
  await page.keyboard.press('Enter');
  await expect(page.locator('.find-field')).toHaveCount(0);
}

const current = (page: Page) => page.locator('.bar [aria-current="page"]');

test('every command of every screen is found from any, the current screen first, and done where it belongs', async ({
  page,
}) => {
  await openSample(page);
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('Control+k');
  await page.locator('.find-field').waitFor();
  const groups = page.getByRole('listbox').getByRole('group');
  await expect(groups).toHaveCount(7);
  expect(await groups.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label')))).toEqual([
    'Piece',
    'Everywhere',
    'Cartoon',
    'Order of work',
    'Bench',
    'Loom check',
    'Record',
  ]);
  await page.keyboard.press('Escape');

  // From Piece: a sheet of the order of work.
  await find(page, 'slits', 'Slits and overhangs');
  await expect(page.getByRole('dialog', { name: 'Slits and overhangs' })).toBeVisible();
  await expect(current(page)).toHaveText(/Order of work/);
  await page.keyboard.press('Escape');

  // From there: a layer of the newest check's picture, once the screen has it; then the table of another screen's drawing.
  await find(page, 'ribs', 'on or off');
  await expect(current(page)).toHaveText(/Loom check/);
  await expect(page.locator('.check-words')).toBeVisible();
  await expect(page.locator('.footer-needed')).toHaveCount(0);
  await find(page, 'trends', 'Show the trends as a table');
  await expect(current(page)).toHaveText(/Record/);
  await expect(page.getByRole('dialog').getByRole('table')).toBeVisible();
});

test('a command that needs something goes to its screen and says what', async ({ page }) => {
  await openSample(page);
  await page.locator('.weft-list').waitFor();
  await find(page, 'mirror', 'mirror');
  await expect(current(page)).toHaveText(/Cartoon/);
  await expect(page.locator('.footer-needed')).toHaveText(
    'This needs a chosen shape: press on one, or N for the next.',
  );
  // It is gone with the next thing done, and what was lacking can be given.
  await page.keyboard.press('n');
  await expect(page.locator('.footer-needed')).toHaveCount(0);
  await find(page, 'take out', 'take out');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
  // A command of the camera, which isn't shown.
  await find(page, 'take the photograph', 'Take the photograph');
  await expect(page.locator('.footer-needed')).toHaveText('This needs the camera: Space opens it.');
});

test('the bench is gone to, and left, by words', async ({ page }) => {
  await openSample(page);
  await page.locator('.weft-list').waitFor();
  await find(page, 'weave bench', 'Weave at the bench');
  await expect(page.locator('.bench-count')).toBeVisible();
  await find(page, 'leave the bench', 'Leave the bench');
  await expect(page.locator('.bench-count')).toHaveCount(0);
  await find(page, 'look ahead', 'look ahead');
  await expect(page.locator('.bench-ahead')).toBeVisible();
});

test('without a piece, what needs one says so', async ({ page }) => {
  await find(page, 'slits', 'Slits and overhangs');
  await expect(page.locator('.footer-needed')).toHaveText(
    'Order of work needs a piece. Start one, open one, or look round the sample.',
  );
});
