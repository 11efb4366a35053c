import type { Page } from '@playwright/test';
import { task } from './actions.ts';
import { expect, fixture, test } from './app.ts';
import { placesOnCloth } from './cartoonPlaces.ts';
import { printed } from './printed.ts';

/*
 * Tasks 1 to 6 of docs/hallway.md, each in no more actions than it says, by mouse and by keys. What a task takes as given
 * is set up first and isn't counted. The tasks of one way run one after another in one window, as people would do them.
 */

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const turn = (page: Page) => page.locator('.bench-turn');

async function seesWarpToCut(page: Page): Promise<void> {
  await expect(page.locator('.warp-table')).toContainText(/\d+\sm of/);
  await expect(field(page, 'Width of the cloth')).toHaveValue('241 mm');
  await expect(field(page, 'Height of the cloth')).toHaveValue('300 mm');
}

/** 170 m weigh 100 g: what is bought weighs as much. */
async function seesGramsToBuy(page: Page): Promise<void> {
  const row = button(page, /Yarn 1/).filter({ has: page.locator('.weft-figure') });
  await expect(row).toContainText(/\d+\sg$/);
  // Until the label is taken in, a guess of the thickness stands there.
  await expect(async () => {
    const figures = await row.locator('.weft-figure').allTextContents();
    const [metres, grams] = figures.map((figure) => Number(figure.replaceAll(/[^\d]/g, '')));
    expect(grams! / metres!).toBeCloseTo(100 / 170, 1);
  }).toPass({ timeout: 10_000 });
}

async function seesTwoHills(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1, name: 'Hill' })).toBeVisible();
  await expect(button(page, 'Only one side')).toBeVisible();
  await expect(page.locator('.shape-steps .is-block')).toHaveCount(2);
}

async function seesThirdBlock(page: Page): Promise<void> {
  const rows = page.getByRole('list', { name: /Blocks in the order/ }).locator('> li');
  await expect(rows.nth((await rows.count()) - 3)).toContainText(/^3/);
}

test('hallway tasks of planning and weaving take no more actions than the script says, by mouse', async ({ page }) => {
  await task(page, 1, 'mouse', async (hand) => {
    await hand.click(button(page, 'Start a piece'));
    await hand.fill(field(page, 'Width of the cloth'), '241');
    await hand.fill(field(page, 'Height of the cloth'), '300');
    await seesWarpToCut(page);
  });
  await task(page, 2, 'mouse', async (hand) => {
    await hand.click(button(page, 'Say how thick Yarn 1 is'));
    await hand.fill(field(page, 'Metres on the label'), '170');
    await hand.click(button(page, 'Close'));
    await seesGramsToBuy(page);
  });
  await task(page, 3, 'mouse', async (hand) => {
    await hand.click(button(page, 'Cartoon'));
    const at = await placesOnCloth(page);
    await hand.click(button(page, 'Hill'));
    await hand.drag(at(3, 60), at(15, 180));
    await hand.click(button(page, 'Mirror about the middle'));
    await seesTwoHills(page);
  });
  await task(page, 4, 'mouse', async (hand) => {
    await hand.click(button(page, 'Work out the order'));
    await seesThirdBlock(page);
    expect((await printed(page, () => hand.click(button(page, 'Print')))).name).toMatch(/-order\.pdf$/);
  });
  await task(page, 5, 'mouse', async (hand) => {
    await hand.click(button(page, 'Weave block 1'));
    for (const after of ['turn 2 of 2', /^turn 1 of/, /^turn 2 of/]) {
      await hand.click(button(page, /^Turn done/));
      await expect(turn(page)).toHaveText(after);
    }
    await hand.click(button(page, 'Take back one'));
    await expect(turn(page)).toHaveText(/^turn 1 of/);
  });
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+2');
  const shapes = page.locator('.shape-row');
  await expect(shapes).toHaveCount(2);
  await task(page, 6, 'mouse', async (hand) => {
    await hand.file(fixture('drawings/boat.svg'), () => hand.click(button(page, 'Picture')));
    await expect(shapes).toHaveCount(5);
    await hand.click(button(page, 'Undo'));
    await expect(shapes).toHaveCount(2);
  });
});

test('hallway tasks of planning and weaving take no more actions than the script says, by keys', async ({ page }) => {
  await task(page, 1, 'keys', async (hand) => {
    await hand.press('n');
    await field(page, 'Width of the cloth').waitFor();
    await hand.tabAndType(field(page, 'Height of the cloth'), '300');
    await hand.tabAndType(field(page, 'Width of the cloth'), '241');
    await seesWarpToCut(page);
  });
  await page.keyboard.press('Escape');
  await task(page, 2, 'keys', async (hand) => {
    await hand.press('y');
    await hand.tabAndType(field(page, 'Metres on the label'), '170');
    await hand.press('Escape');
    await seesGramsToBuy(page);
  });
  await task(page, 3, 'keys', async (hand) => {
    await hand.press('Control+2');
    await page.locator('.cartoon-rulers').waitFor();
    await hand.press('3');
    await hand.press('3');
    await hand.press('Shift+ArrowLeft');
    await hand.press('Shift+ArrowLeft');
    await hand.press('m');
    await seesTwoHills(page);
  });
  await task(page, 4, 'keys', async (hand) => {
    await hand.press('Control+3');
    await seesThirdBlock(page);
    expect((await printed(page, () => hand.press('Control+P'))).name).toMatch(/-order\.pdf$/);
  });
  await task(page, 5, 'keys', async (hand) => {
    await hand.press('Enter');
    await expect(turn(page)).toHaveText('turn 1 of 2');
    for (const after of ['turn 2 of 2', /^turn 1 of/, /^turn 2 of/]) {
      await hand.press('Space');
      await expect(turn(page)).toHaveText(after);
    }
    await hand.press('Backspace');
    await expect(turn(page)).toHaveText(/^turn 1 of/);
  });
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+2');
  const shapes = page.locator('.shape-row');
  await expect(shapes).toHaveCount(2);
  await task(page, 6, 'keys', async (hand) => {
    await hand.file(fixture('drawings/boat.svg'), () => hand.press('o'));
    await expect(shapes).toHaveCount(5);
    await hand.press('Control+Z');
    await expect(shapes).toHaveCount(2);
  });
});
