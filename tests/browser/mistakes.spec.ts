import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { Hand, tabTo } from './actions.ts';
import { choose, expect, fixture, test } from './app.ts';
import { placesOnCloth } from './cartoonPlaces.ts';

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const gone = (page: Page) => expect(page.getByRole('dialog')).toHaveCount(0);

/** The one piece of this home as it lies on disk; what says when it was written doesn't count. */
function onDisk(home: string): unknown {
  const folder = join(home, 'pieces', readdirSync(join(home, 'pieces'))[0]!);
  const read = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'));
  const { changed: _, ...piece } = read('piece.json').body;
  return piece;
}

/** Whatever was done wrong is made good when the piece is on disk as it was. */
const asItWas = (home: string, before: unknown) => expect.poll(() => onDisk(home), { intervals: [60] }).toEqual(before);
const changed = (home: string, before: unknown) =>
  expect.poll(() => JSON.stringify(onDisk(home)), { intervals: [60] }).not.toBe(JSON.stringify(before));
const refused = (page: Page) => page.getByRole('alert');
const shapes = (page: Page) => page.locator('.shape-row');
const told = (page: Page) => page.getByRole('dialog', { name: 'Brought in' });
const done = (page: Page) => page.locator('.bench-turn');

test('six mistakes and more are made good, by mouse', async ({ page, app }) => {
  const hand = new Hand(page);
  const undo = button(page, 'Undo');
  await button(page, 'Start a piece').click();
  await button(page, 'Draw the cartoon').click();
  const at = await placesOnCloth(page);
  for (const [tool, left, right] of [
    ['Hill', 3, 15],
    ['Ellipse', 20, 30],
  ] as const) {
    await button(page, tool).click();
    await hand.drag(at(left, 60), at(right, 160));
  }
  await expect(shapes(page)).toHaveCount(3);
  await expect.poll(() => (onDisk(app.home) as { shapes: unknown[] }).shapes.length, { intervals: [60] }).toBe(2);
  const before = onDisk(app.home);

  // A shape dragged off the cloth.
  await hand.drag(at(25, 110), { x: at(25, 110).x + 420, y: at(25, 110).y });
  await changed(app.home, before);
  await undo.click();
  await asItWas(app.home, before);

  // A shape taken out.
  await shapes(page).filter({ hasText: 'Hill' }).click();
  await button(page, 'More for this shape').click();
  await button(page, 'Take it out').click();
  await expect(shapes(page)).toHaveCount(2);
  await undo.click();
  await expect(shapes(page)).toHaveCount(3);
  await asItWas(app.home, before);

  // A drawing that is cut short, and a photograph that is none: told in words, and nothing is put on the cloth.
  for (const [path, says] of [
    ['drawings/broken.svg', /drawing/],
    ['drawings/no-photograph.jpg', /can’t be read/],
  ] as const) {
    await choose(page, fixture(path), () => button(page, 'Picture').click());
    await expect(told(page)).toContainText(says);
    await button(page, 'Close').click();
    await expect(shapes(page)).toHaveCount(3);
  }
  await asItWas(app.home, before);

  // A number with a nought too many is refused; one with a nought too few is taken, and taken back.
  await button(page, 'Piece').click();
  const height = field(page, 'Height of the cloth');
  await hand.fill(height, '2600');
  await expect(refused(page)).toContainText('mm runs past the top bar');
  await asItWas(app.home, before);
  await hand.fill(height, '26');
  await changed(app.home, before);
  await undo.click();
  await expect(height).toHaveValue('260 mm');
  await asItWas(app.home, before);

  // A loom smaller than the piece: said at once, with one press that makes the piece fit; both can be taken back.
  await button(page, 'Change the loom').click();
  await hand.fill(field(page, 'Inside, up'), '200');
  await button(page, 'Close').click();
  await expect(page.getByRole('list', { name: 'What to watch' })).toContainText(/top bar/);
  await button(page, /^Make it \d+\smm$/).click();
  await expect(height).not.toHaveValue('260 mm');
  await undo.click();
  await undo.click();
  await expect(height).toHaveValue('260 mm');
  await asItWas(app.home, before);

  // A turn ticked too many.
  await button(page, 'Order of work').click();
  await button(page, 'Weave block 1').click();
  await expect(done(page)).toHaveText('turn 1 of 2');
  await button(page, /^Turn done/).click();
  await expect(done(page)).toHaveText('turn 2 of 2');
  await button(page, /^Turn done/).click();
  await expect(done(page)).toHaveText(/^turn 1 of \d\d/);
  await button(page, 'Take back one').click();
  await expect(done(page)).toHaveText('turn 2 of 2');
  // The hand on the space bar goes on weaving: the button that was pressed doesn't take it.
  await page.keyboard.press('Space');
  await expect(done(page)).toHaveText(/^turn 1 of \d\d/);
  await asItWas(app.home, before);
});

test('six mistakes and more are made good, by keyboard alone', async ({ page, app }) => {
  const hand = new Hand(page);
  const { keyboard } = page;
  await keyboard.press('n');
  await button(page, 'New piece: list of pieces').waitFor();
  await keyboard.press('Control+2');
  for (const key of ['3', '3', 'Shift+ArrowLeft', '6', '6', 'Shift+ArrowRight']) await keyboard.press(key);
  await expect(shapes(page)).toHaveCount(3);
  await expect.poll(() => (onDisk(app.home) as { shapes: unknown[] }).shapes.length, { intervals: [60] }).toBe(2);
  const before = onDisk(app.home);

  // A shape pushed off the cloth: after a pause, one run of presses is one step back.
  await page.waitForTimeout(800);
  for (let press = 0; press < 8; press++) await keyboard.press('Shift+ArrowRight');
  await changed(app.home, before);
  await keyboard.press('Control+Z');
  await asItWas(app.home, before);

  // A shape taken out, and with it the row that had the focus: the head of the screen takes it.
  await shapes(page).first().click();
  await keyboard.press('Delete');
  await expect(shapes(page)).toHaveCount(2);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await keyboard.press('Control+Z');
  await expect(shapes(page)).toHaveCount(3);
  await asItWas(app.home, before);

  for (const [path, says] of [
    ['drawings/broken.svg', /drawing/],
    ['drawings/no-photograph.jpg', /can’t be read/],
  ] as const) {
    await choose(page, fixture(path), () => keyboard.press('o'));
    await expect(told(page)).toContainText(says);
    await keyboard.press('Escape');
    await gone(page);
    await expect(shapes(page)).toHaveCount(3);
  }
  await asItWas(app.home, before);

  await keyboard.press('Control+1');
  const height = field(page, 'Height of the cloth');
  await hand.tabAndType(height, '2600');
  await expect(refused(page)).toContainText('mm runs past the top bar');
  await asItWas(app.home, before);
  // What is only typed is taken back by Esc.
  await tabTo(height, 'Shift+Tab');
  await keyboard.type('90');
  await keyboard.press('Escape');
  await expect(height).toHaveValue('260 mm');
  await asItWas(app.home, before);
  await hand.tabAndType(height, '26');
  await changed(app.home, before);
  await keyboard.press('Escape');
  await keyboard.press('Control+Z');
  await expect(height).toHaveValue('260 mm');
  await asItWas(app.home, before);

  await keyboard.press('l');
  await hand.tabAndType(field(page, 'Inside, up'), '200');
  await keyboard.press('Escape');
  await gone(page);
  await expect(page.getByRole('list', { name: 'What to watch' })).toContainText(/top bar/);
  await hand.tabAndPress(button(page, /^Make it \d+\smm$/));
  await expect(height).not.toHaveValue('260 mm');
  await keyboard.press('Control+Z');
  await keyboard.press('Control+Z');
  await expect(height).toHaveValue('260 mm');
  await asItWas(app.home, before);

  await keyboard.press('Control+3');
  await button(page, 'Weave block 1').waitFor();
  await keyboard.press('Enter');
  await expect(done(page)).toHaveText('turn 1 of 2');
  await keyboard.press('Space');
  await expect(done(page)).toHaveText('turn 2 of 2');
  await keyboard.press('Space');
  await expect(done(page)).toHaveText(/^turn 1 of \d\d/);
  await keyboard.press('Backspace');
  await expect(done(page)).toHaveText('turn 2 of 2');
  await asItWas(app.home, before);
});
