import type { Page } from '@playwright/test';
import { Hand, tabTo } from './actions.ts';
import { expect, test } from './app.ts';
import { placesOnCloth } from './cartoonPlaces.ts';
import { type Printed, printed } from './printed.ts';

const pitch = 6.35;
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const sheet = (page: Page) => page.getByRole('dialog');
const gone = (page: Page) => expect(sheet(page)).toHaveCount(0);

/** 39 ends are 247.65 mm; on a loom of 450 mm between the bars, 300 mm of cloth. */
const ends = 39;

async function expectPlan(page: Page): Promise<void> {
  const list = page.getByRole('list', { name: /Blocks in the order/ });
  await expect(list.getByText('Left hill', { exact: true })).toBeVisible();
  const names = await list.locator('> li').evaluateAll((rows) => rows.map((row) => row.textContent ?? ''));
  // The list stands as the cloth grows: the last row is woven first.
  const place = (part: string) => names.length - names.findIndex((name) => name.includes(part));
  expect(place('Header')).toBe(1);
  expect(place('Ground, foot')).toBe(2);
  for (const hill of ['Left hill', 'Right hill']) {
    expect(place(hill)).toBeGreaterThan(place('Ground, foot'));
    expect(place('Ground, head')).toBeGreaterThan(place(hill));
  }
}

function expectOrderSheet(sheet: Printed): void {
  expect(sheet.name).toBe('two-hills-order.pdf');
  expect(sheet.title).toBe('Two hills, order of work');
  expect(sheet.pages.length).toBeGreaterThanOrEqual(2);
  for (const { width, height } of sheet.pages) {
    expect(width).toBeCloseTo(210, 0);
    expect(height).toBeCloseTo(297, 0);
  }
  if (sheet.words === null) return;
  const said = sheet.words.join('\n');
  for (const name of ['Two hills', 'Left hill', 'Right hill', 'Header', 'Moss']) expect(said).toContain(name);
}

function expectWarpingSheet(sheet: Printed): void {
  expect(sheet.name).toBe('two-hills-warping.pdf');
  expect(sheet.pages.length).toBeGreaterThanOrEqual(1);
  if (sheet.words !== null) expect(sheet.words.join('\n')).toContain(`${ends} ends`);
}

/** True size: the pages, less what neighbours share, hold the whole cloth; one more says how they go together. */
function expectCartoonSheet(sheet: Printed): void {
  expect(sheet.name).toBe('two-hills-cartoon.pdf');
  const [, ...tiles] = sheet.pages;
  const area = tiles.reduce((sum, { width, height }) => sum + width * height, 0);
  expect(area).toBeGreaterThan(ends * pitch * 300);
  expect(tiles.length).toBeLessThanOrEqual(6);
  if (sheet.words === null) return;
  // Seams name the neighbours: `to row 2, column 1`.
  const places = sheet.words.slice(1).map((words) => /(?<!to )row \d+, column \d+/.exec(words)?.[0]);
  expect(new Set(places).size).toBe(tiles.length);
}

test('a piece with two hills is planned and printed from nothing, by mouse', async ({ page }) => {
  const hand = new Hand(page);
  await button(page, 'Start a piece').click();
  await button(page, /: list of pieces$/).click();
  await hand.fill(field(page, 'Name of this piece'), 'Two hills');
  await button(page, 'Close').click();
  await expect(button(page, 'Two hills: list of pieces')).toBeVisible();
  // The loom.
  await button(page, 'Change the loom').click();
  await hand.fill(field(page, 'Notches'), '61');
  await hand.fill(field(page, 'Inside, across'), '400');
  await hand.fill(field(page, 'Inside, up'), '45 cm');
  await button(page, 'Close').click();
  // Warp and sizes: on the drawing's own lines, in whatever unit comes to mind.
  await hand.fill(field(page, 'Width of the cloth'), '9 3/4 in');
  await hand.fill(field(page, 'Height of the cloth'), '30 cm');
  await button(page, 'Change the warp').click();
  await expect(field(page, 'Ends')).toHaveValue(String(ends));
  await sheet(page).getByRole('radio', { name: 'one' }).click();
  await hand.fill(field(page, 'Thickness of a string'), '2');
  await button(page, 'Close').click();
  await expect(page.getByText('one string to each', { exact: false })).toBeVisible();
  // Yarns: the head of the screen says what is missing and offers to take it.
  await button(page, 'Say how thick Yarn 1 is').click();
  await hand.fill(field(page, 'Name'), 'Night');
  await hand.fill(field(page, 'Metres on the label'), '100');
  await button(page, 'Close').click();
  await button(page, 'Say how thick Yarn 2 is').click();
  await hand.fill(field(page, 'Metres on the label'), '100');
  await button(page, 'Close').click();
  await button(page, 'Add a yarn').click();
  await hand.fill(field(page, 'Name'), 'Moss');
  await button(page, 'Close').click();
  await expect(button(page, /Say how thick/)).toHaveCount(0);
  expectWarpingSheet(await printed(page, () => button(page, 'Warping sheet').click()));
  // Two hills, corner by corner.
  await button(page, 'Draw the cartoon').click();
  const at = await placesOnCloth(page);
  for (const [name, left, right] of [
    ['Left hill', 2.5, 18.5],
    ['Right hill', 21.5, 37.5],
  ] as const) {
    await button(page, 'Polygon').click();
    const foot = [at(left, 40), at(right, 40)] as const;
    const top = at((left + right) / 2, 140);
    for (const corner of [foot[0], foot[1], top, foot[0]]) await page.mouse.click(corner.x, corner.y);
    await button(page, 'More for this shape').click();
    await hand.fill(field(page, 'Name'), name);
    await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
    // A hill whose sides run evenly strays by no more than an end.
    const stray = await page.locator('.shape-figure').textContent();
    expect(Number.parseFloat(stray ?? '')).toBeLessThanOrEqual(pitch);
  }
  expectCartoonSheet(await printed(page, () => button(page, 'Print at true size').click()));
  await button(page, 'Work out the order').click();
  await expectPlan(page);
  expectOrderSheet(await printed(page, () => button(page, 'Print').click()));
});

test('a piece with two hills is planned and printed from nothing, by keyboard alone', async ({ page }) => {
  const hand = new Hand(page);
  const { keyboard } = page;
  await keyboard.press('n');
  await expect(button(page, 'New piece: list of pieces')).toBeVisible();
  await keyboard.press('Control+O');
  await hand.tabAndType(field(page, 'Name of this piece'), 'Two hills');
  await keyboard.press('Escape');
  await gone(page);
  await keyboard.press('l');
  await hand.tabAndType(field(page, 'Notches'), '61');
  await hand.tabAndType(field(page, 'Inside, across'), '400');
  await hand.tabAndType(field(page, 'Inside, up'), '45 cm');
  await keyboard.press('Escape');
  await gone(page);
  await hand.tabAndType(field(page, 'Height of the cloth'), '30 cm');
  await hand.tabAndType(field(page, 'Width of the cloth'), '9 3/4 in');
  await keyboard.press('w');
  await expect(field(page, 'Ends')).toHaveValue(String(ends));
  await tabTo(sheet(page).getByRole('radio', { name: 'two' }));
  await keyboard.press('ArrowLeft');
  await hand.tabAndType(field(page, 'Thickness of a string'), '2');
  await keyboard.press('Escape');
  await gone(page);
  await expect(page.getByText('one string to each', { exact: false })).toBeVisible();
  for (const [yarn, name] of [
    ['Yarn 1', 'Night'],
    ['Yarn 2', 'Linen'],
  ] as const) {
    await hand.tabAndPress(button(page, `Say how thick ${yarn} is`));
    await hand.tabAndType(field(page, 'Name'), name);
    await hand.tabAndType(field(page, 'Metres on the label'), '100');
    await keyboard.press('Escape');
    await gone(page);
  }
  await hand.tabAndPress(button(page, 'Add a yarn'));
  await hand.tabAndType(field(page, 'Name'), 'Moss');
  await keyboard.press('Escape');
  await gone(page);
  expectWarpingSheet(await printed(page, () => keyboard.press('Control+P')));
  await keyboard.press('Control+2');
  for (const [name, left, right] of [
    ['Left hill', 2, 18],
    ['Right hill', 21, 37],
  ] as const) {
    // Twice its key puts a hill on the middle; its corners are then typed.
    await keyboard.press('3');
    await keyboard.press('3');
    for (const [end, height] of [
      [left, 40],
      [right, 40],
      [(left + right) / 2, 140],
    ] as const) {
      await keyboard.press('c');
      await keyboard.press('i');
      await hand.tabAndType(field(page, 'Height above the twining'), String(height));
      await hand.tabAndType(field(page, 'Ends from the left edge'), String(end));
      // Out of the fields again, so that letters are keys.
      await keyboard.press('Escape');
    }
    await keyboard.press('i');
    await hand.tabAndPress(button(page, 'More for this shape'));
    await hand.tabAndType(field(page, 'Name'), name);
    await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
    await keyboard.press('Escape');
    const stray = await page.locator('.shape-figure').textContent();
    expect(Number.parseFloat(stray ?? '')).toBeLessThanOrEqual(pitch);
  }
  expectCartoonSheet(await printed(page, () => keyboard.press('Control+P')));
  await keyboard.press('Control+3');
  await expectPlan(page);
  expectOrderSheet(await printed(page, () => keyboard.press('Control+P')));
});
