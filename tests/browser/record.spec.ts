import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { choose, dropPhotograph, expect, fixture, measured, opened, test } from './app.ts';
import { type Printed, printed } from './printed.ts';
import { trueEdge } from './truth.ts';

/** A photograph the sample has no check of yet, small enough to be read quickly. */
const photograph = join(mkdtempSync(join(tmpdir(), 'plumbweft-record-')), 'seq5.jpg');

/** Pictures are made one after another; a busy machine takes its time over them. */
const pictures = { timeout: 90_000 };

test.beforeAll(async () => {
  await sharp(fixture('sequence/seq5.jpg')).resize({ width: 1080 }).jpeg({ quality: 92 }).toFile(photograph);
});

interface Row {
  readonly check: string;
  readonly fell: number;
  /** mm, positive out. */
  readonly right: number;
  readonly sigma: number;
}

/** The newest two rows of the table behind the trends. */
async function newestTwo(page: Page): Promise<readonly [earlier: Row, later: Row]> {
  const rows = await page.getByRole('dialog').getByRole('row').allInnerTexts();
  const read = rows.slice(-2).map((row): Row => {
    const [check = '', fell = '', , right = ''] = row.split('\t');
    const [, size, side, sigma] = /([\d.]+)\smm (in|out) ±\s([\d.]+)/.exec(right) ?? [];
    return {
      check: check.split(' ·')[0]!,
      fell: Number.parseFloat(fell),
      right: (side === 'in' ? -1 : 1) * Number(size),
      sigma: Number(sigma),
    };
  });
  return [read[0]!, read[1]!];
}

/** What the two checks say lies where the truth files say it does, and the sentence says which way it went. */
async function agreeWithTruth(page: Page, [earlier, later]: readonly [Row, Row]): Promise<void> {
  for (const [name, row] of [
    ['seq4', earlier],
    ['seq5', later],
  ] as const) {
    const truth = trueEdge(`sequence/${name}`, 'right', { ends: 33, pitch: 6.35 }, row.fell - 6);
    expect(Math.abs(row.right - truth), `${name}: ${row.right} against ${truth}`).toBeLessThan(
      Math.max(0.8, 3 * row.sigma),
    );
  }
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('The right edge has come in further.');
}

/** The report is one sheet about this check, and its figure of the right edge is the one on screen. */
function reportIsRight({ name, pages, words }: Printed, later: Row): void {
  expect(name).toBe('harbour-lantern-report.pdf');
  expect(pages.length).toBeGreaterThan(0);
  expect(pages[0]!.width).toBeCloseTo(210, 0);
  if (words === null) return;
  const text = words.join(' ').replace(/\s+/g, ' ');
  expect(text).toContain('Harbour lantern');
  expect(text).toContain('33 of 33');
  expect(text).toContain('Leave the weft slacker at the right for the next 6 turns.');
  const [, fell] = /Fell, middle ([\d.]+) mm/.exec(text) ?? [];
  expect(Number(fell)).toBeCloseTo(later.fell, 0);
  const [, size] = /Right edge drawing in since \d+ mm up\. ([\d.]+) mm in/.exec(text) ?? [];
  expect(Math.abs(-Number(size) - later.right)).toBeLessThan(1);
}

const line = (page: Page) => page.getByRole('slider');
const share = async (page: Page) => Number(await line(page).getAttribute('aria-valuenow'));

test('two checks are compared and the report is made, by mouse', async ({ page }) => {
  await page.getByRole('button', { name: /Look round/ }).click();
  await opened(page);
  await page.getByRole('button', { name: /^Loom check/ }).click();
  await page.getByText(/^Check \d+ ·/).waitFor();
  await dropPhotograph(page, photograph);
  await measured(page);
  await page.getByRole('button', { name: 'Keep this check' }).click();
  await expect(page.getByText(/^Check 5 ·/)).toBeVisible();
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await expect(page.locator('.compare-slide image')).toHaveCount(2, pictures);
  const box = (await page.locator('.compare-slide').boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.36, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.7, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  expect(await share(page)).toBeCloseTo(70, -1);
  await page.getByRole('button', { name: 'Show the trends as a table' }).click();
  const rows = await newestTwo(page);
  await page.getByRole('button', { name: 'Close' }).click();
  await agreeWithTruth(page, rows);
  reportIsRight(await printed(page, () => page.getByRole('button', { name: 'Make the report' }).click()), rows[1]);
  await expect(page.getByText('The report is made.')).toBeVisible();
  // The check before stays where it was, and can be compared with the one before it in turn.
  await page.getByRole('button', { name: /^Check 4/ }).click();
  await expect(page.getByText(/^Check 3 ·/)).toBeVisible();
});

test('two checks are compared and the report is made, by keyboard alone', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await page.getByText(/^Check \d+ ·/).waitFor();
  await choose(page, photograph, () => page.keyboard.press('o'));
  await measured(page);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Check 5 ·/)).toBeVisible();
  await page.keyboard.press('Control+5');
  await expect(page.locator('.compare-slide image')).toHaveCount(2, pictures);
  const before = await share(page);
  for (let press = 0; press < 5; press++) await page.keyboard.press('ArrowRight');
  expect((await share(page)) - before).toBe(10);
  await page.keyboard.press('t');
  const rows = await newestTwo(page);
  await page.keyboard.press('Escape');
  await agreeWithTruth(page, rows);
  reportIsRight(await printed(page, () => page.keyboard.press('r')), rows[1]);
  await expect(page.getByText('The report is made.')).toBeVisible();
  await page.keyboard.press('[');
  await expect(page.getByText(/^Check 3 ·/)).toBeVisible();
});

test('what can be done with a check stays in view, however much there is to say', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+5');
  const words = page.locator('.record-said');
  const actions = page.locator('.record-words > .record-actions');
  await expect(actions.getByRole('button')).not.toHaveCount(0);
  // The checks are read one after another: what comes later would move what is looked at.
  await expect(page.locator('.compare-slide image').first()).toBeAttached(pictures);
  await page.locator('.record-trends canvas').last().waitFor();
  for (const size of [
    { width: 1280, height: 800 },
    { width: 1280, height: 660 },
  ]) {
    await page.setViewportSize(size);
    // As many flags make it: many lines above the trends.
    await words.evaluate((element) => {
      const lines = document.createElement('div');
      lines.textContent = 'Said about one flag. '.repeat(160);
      element.insertBefore(lines, element.children[2] ?? null);
    });
    expect(await words.evaluate((element) => element.scrollHeight > element.clientHeight)).toBe(true);
    for (const button of await actions.getByRole('button').all()) await expect(button).toBeInViewport({ ratio: 1 });
    const footer = (await page.locator('.footer').boundingBox())!;
    const row = (await actions.boundingBox())!;
    expect(row.y + row.height).toBeLessThanOrEqual(footer.y + 1);
    // Scrolled to, the last line of the trends isn't hidden under them.
    await words.evaluate((element) => element.scrollTo(0, element.scrollHeight));
    const lowest = async (part: string) => {
      const box = (await page.locator(part).boundingBox())!;
      return box.y + box.height;
    };
    const top = async () => (await actions.boundingBox())!.y;
    await expect.poll(async () => (await lowest('.record-trends')) - (await top())).toBeLessThanOrEqual(1);
  }
});

test('the trends take the new colours when the computer switches between light and dark', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+5');
  await page.locator('.record-trends canvas').last().waitFor();
  await expect(page.locator('.compare-slide image').first()).toBeAttached(pictures);
  const painted = () =>
    page
      .locator('.record-trends canvas')
      .evaluateAll((all) => all.map((each) => (each as HTMLCanvasElement).toDataURL()));
  const light = await painted();
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(async () => (await painted()).every((each, index) => each !== light[index])).toBe(true);
  await page.emulateMedia({ colorScheme: 'light' });
  await expect.poll(painted).toEqual(light);
});
