import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { task } from './actions.ts';
import { expect, fixture, measured, test } from './app.ts';
import { printed } from './printed.ts';
import { openSample } from './screens.ts';

/*
 * Tasks 7 to 10 of docs/hallway.md, each in no more actions than it says, by mouse and by keys. What a task takes as given
 * is set up first and isn't counted.
 */

const photograph = join(mkdtempSync(join(tmpdir(), 'plumbweft-hallway-')), 'loom.jpg');

/** Pictures are made one after another; a busy machine takes its time over them. */
const pictures = { timeout: 90_000 };

test.beforeAll(async () => {
  await sharp(fixture('sequence/seq3.jpg')).resize({ width: 1080 }).jpeg({ quality: 92 }).toFile(photograph);
});

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function seesRightEdge(page: Page): Promise<void> {
  await measured(page);
  await expect(page.getByText(/^2\.\d\smm in$/).first()).toBeVisible();
}
const seesFlagAside = (page: Page) => expect(page.getByText('Put aside: it is meant so').first()).toBeVisible();

/** The two checks beside each other, and what moved between them. */
async function seesThirdAgainstSecond(page: Page): Promise<void> {
  await expect(page.getByText(/^Check 2 ·/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The right edge has come in further.');
}

async function getsPicture(page: Page, ask: () => Promise<unknown>): Promise<void> {
  const [download] = await Promise.all([page.waitForEvent('download'), ask()]);
  expect(download.suggestedFilename()).toMatch(/\.jpg$/);
  await expect(page.getByRole('list', { name: /What was done/ })).toContainText('I changed chairs');
}

/** Loom check with the newest kept check open, as task 8 begins. */
async function onKeptCheck(page: Page): Promise<void> {
  await page.keyboard.press('Control+5');
  await expect(page.locator('.compare-slide image')).toHaveCount(2, pictures);
  await page.keyboard.press('o');
  await expect(page.getByText(/^Check 4 ·/)).toBeVisible();
}
async function onRecord(page: Page): Promise<void> {
  await page.keyboard.press('Control+5');
  await expect(page.getByText(/^Check 3 ·/)).toBeVisible();
}

test('hallway tasks of checking and keeping take no more actions than the script says, by mouse', async ({ page }) => {
  await openSample(page);
  await task(page, 7, 'mouse', async (hand) => {
    await hand.click(button(page, /^Loom check/));
    const choose = button(page, 'Choose a photograph');
    await choose.waitFor();
    await hand.file(photograph, () => hand.click(choose));
    await seesRightEdge(page);
  });
  await onKeptCheck(page);
  await task(page, 8, 'mouse', async (hand) => {
    await hand.click(button(page, 'Put this flag aside'));
    await hand.fill(field(page, 'Why it is right as it is'), 'it is meant so');
    await hand.click(button(page, 'Put this flag aside'));
    await seesFlagAside(page);
  });
  await onRecord(page);
  await task(page, 9, 'mouse', async (hand) => {
    await hand.click(button(page, /^Check 3/));
    await seesThirdAgainstSecond(page);
    const report = await printed(page, () => hand.click(button(page, 'Make the report')));
    expect(report.name).toMatch(/-report\.pdf$/);
  });
  await task(page, 10, 'mouse', async (hand) => {
    await hand.click(button(page, 'Add a note'));
    await hand.fill(field(page, 'In your own words'), 'I changed chairs');
    await hand.click(button(page, 'Keep the note'));
    await getsPicture(page, () => hand.click(button(page, 'A picture to share')));
  });
});

test('hallway tasks of checking and keeping take no more actions than the script says, by keys', async ({ page }) => {
  await openSample(page);
  await task(page, 7, 'keys', async (hand) => {
    await hand.press('Control+4');
    await expect(page.getByText(/^Check 4 ·/)).toBeVisible();
    await hand.file(photograph, () => hand.press('o'));
    await seesRightEdge(page);
  });
  await onKeptCheck(page);
  await task(page, 8, 'keys', async (hand) => {
    await hand.tabAndPress(button(page, 'Put this flag aside'));
    await hand.tabAndType(field(page, 'Why it is right as it is'), 'it is meant so');
    await hand.press('Enter');
    await seesFlagAside(page);
  });
  await onRecord(page);
  await task(page, 9, 'keys', async (hand) => {
    await hand.press('[');
    await seesThirdAgainstSecond(page);
    const report = await printed(page, () => hand.press('r'));
    expect(report.name).toMatch(/-report\.pdf$/);
  });
  await task(page, 10, 'keys', async (hand) => {
    await hand.press('n');
    await hand.tabAndType(field(page, 'In your own words'), 'I changed chairs');
    await hand.tabAndPress(button(page, 'Keep the note'));
    await getsPicture(page, () => hand.press('g'));
  });
});
