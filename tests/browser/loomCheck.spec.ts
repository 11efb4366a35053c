import type { Page } from '@playwright/test';
import { choose, dropPhotograph, expect, fixture, measured, opened, test } from './app.ts';
import { trueEdge } from './truth.ts';

const photograph = fixture('sequence/seq3.jpg');

/** The figure of the open flag, read off the screen: `2.9 mm in`, `give or take 0.3`. */
async function readFlag(
  page: Page,
): Promise<{ readonly millimetres: number; readonly sigma: number; readonly title: string }> {
  const flag = page.getByRole('listitem').filter({ has: page.locator('[aria-expanded="true"]') });
  const title = (await flag.getByRole('button', { expanded: true }).textContent()) ?? '';
  const said = ((await flag.textContent()) ?? '').replace(/\s+/g, ' ');
  const found = /([\d.]+) mm (in|out) give or take ([\d.]+)/.exec(said);
  expect(found, `a figure with its give or take in "${said}"`).not.toBeNull();
  const [, size, side, sigma] = found!;
  return { millimetres: (side === 'in' ? -1 : 1) * Number(size), sigma: Number(sigma), title };
}

/** `Check 6 · Tuesday 3 March, 16:20`, from the footer. */
const checkName = async (page: Page): Promise<string> => (await page.getByText(/^Check \d+ ·/).textContent()) ?? '';

/** The height the right edge's flag speaks of is the newest cloth, about 129 mm up in this photograph. */
const truth = trueEdge('sequence/seq3', 'right', { ends: 33, pitch: 6.35 }, 129);

async function goToRightEdgeFlag(page: Page): Promise<void> {
  const flags = page.getByRole('button', { name: /^Flag \d/ });
  await expect(flags.first()).toBeVisible();
  const at = await flags.count();
  for (let number = 1; number <= at; number++) {
    await page.keyboard.press(String(number));
    const { title } = await readFlag(page).catch(() => ({ title: '' }));
    if (/right edge/i.test(title)) return;
  }
  throw new Error('No flag speaks of the right edge.');
}

test('from the sample to a kept check, by mouse', async ({ page }) => {
  await page.getByRole('button', { name: /Look round/ }).click();
  await opened(page);
  await page.getByRole('button', { name: 'Loom check', exact: false }).first().click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await dropPhotograph(page, photograph);
  await measured(page);
  await page
    .getByRole('button', { name: /^Flag \d.*[Rr]ight edge/ })
    .first()
    .click();
  const flag = await readFlag(page);
  expect(truth).toBeLessThan(-2);
  expect(Math.abs(flag.millimetres - truth)).toBeLessThan(Math.max(0.8, 3 * flag.sigma));
  await page.getByRole('button', { name: 'Keep this check' }).click();
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  const number = /^Check (\d+)/.exec(await checkName(page))?.[1];
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  const kept = page.getByRole('button', { name: new RegExp(`^Check ${number}\\b`) });
  await expect(kept).toBeVisible();
  await kept.click();
  await page.getByRole('button', { name: 'Open this check' }).click();
  await expect(page.getByText(new RegExp(`^Check ${number} ·`))).toBeVisible();
  await expect(page.getByRole('button', { name: /^Flag \d.*[Rr]ight edge/ }).first()).toBeVisible();
});

test('from the sample to a kept check, by keyboard alone', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await choose(page, photograph, () => page.keyboard.press('o'));
  await measured(page);
  await goToRightEdgeFlag(page);
  const flag = await readFlag(page);
  expect(Math.abs(flag.millimetres - truth)).toBeLessThan(Math.max(0.8, 3 * flag.sigma));
  await page.keyboard.press('t');
  await expect(page.getByRole('dialog').getByRole('row').nth(5)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  const said = await checkName(page);
  await page.keyboard.press('Control+5');
  await expect(
    page.getByRole('list', { name: /What was done/ }).getByText(said.split(' ·')[0]!, { exact: true }),
  ).toBeVisible();
});

test('a reading can be stopped, and nothing is kept', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  const before = await checkName(page);
  await choose(page, photograph, () => page.keyboard.press('o'));
  await expect(page.getByRole('heading', { name: 'Reading the photograph.' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText(before)).toBeVisible();
});

test('what is not a loom is turned away in words, and four points can be marked by keys', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await choose(page, fixture('real/chessboards/left01.jpg'), () => page.keyboard.press('o'));
  await expect(page.getByText('Nothing has been guessed and nothing saved.')).toBeVisible({ timeout: 180_000 });
  await page.keyboard.press('4');
  const corners = page.getByRole('button', { name: /^Inner corner/ });
  await expect(corners).toHaveCount(4);
  await expect(page.getByRole('button', { name: 'Measure with these' })).toHaveAttribute('aria-disabled', 'true');
  for (let at = 0; at < 4; at++) {
    await corners.nth(at).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+ArrowRight');
  }
  await expect(page.getByRole('button', { name: /: marked$/ })).toHaveCount(4);
  await expect(page.getByRole('button', { name: 'Measure with these' })).toHaveAttribute('aria-disabled', 'false');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Delete');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
});

test('lengths and a card can be marked by keys beside the corners, and what disagrees is named', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await choose(page, photograph, () => page.keyboard.press('o'));
  await measured(page);
  await page.keyboard.press('m');
  await expect(page.getByRole('button', { name: /^Inner corner/ })).toHaveCount(4);
  await page.keyboard.press('c');
  await expect(page.getByRole('button', { name: /^Card \d, corner/ })).toHaveCount(4);
  await page.keyboard.press('c');
  await expect(page.getByRole('button', { name: /^Card \d, corner/ })).toHaveCount(0);
  const ends = page.getByRole('button', { name: /^Known length, end/ });
  await page.keyboard.press('l');
  await expect(ends).toHaveCount(2);
  const measure = page.getByRole('button', { name: 'Measure with these' });
  await expect(measure).toHaveAttribute('aria-disabled', 'true');
  for (let at = 0; at < 2; at++) {
    await ends.nth(at).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+ArrowUp');
    await expect(page.locator('.magnifier')).toBeVisible();
  }
  await expect(measure).toHaveAttribute('aria-disabled', 'true');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('How far apart are A and B?');
  const first = page.getByRole('textbox', { name: 'From A to B' });
  await expect(first).toHaveValue('');
  await first.fill('50');
  await page.keyboard.press('Enter');
  await expect(measure).toHaveAttribute('aria-disabled', 'false');
  await page.getByRole('button', { name: 'Mark another length' }).click();
  await expect(ends).toHaveCount(4);
  await expect(page.getByRole('button', { name: 'Mark another length' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Take away: From C to D' }).click();
  await expect(ends).toHaveCount(2);
  await measure.click();
  await measured(page);
  // The loom is found without it, and two fifths of the picture's width are no 50 mm.
  await expect(page.getByText(/^The length of 50\.0\smm is [\d.]+\smm out against everything else/)).toBeVisible();
  // Kept, it is read in whichever unit the weaver reads that day.
  await page.keyboard.press('k');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await page
    .getByRole('radio', { name: 'in', exact: true })
    .or(page.getByRole('button', { name: 'in', exact: true }))
    .first()
    .click();
  await expect(page.getByText(/^The length of 1\s.*in is .*in out against everything else/)).toBeVisible();
});

test('the keys of marking keep their room beside what is lacking, in both languages', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.keyboard.press('l');
  await opened(page);
  for (const language of ['English', 'Deutsch']) {
    await page.keyboard.press('F1');
    await page
      .getByRole('radio', { name: language })
      .or(page.getByRole('button', { name: language }))
      .first()
      .click();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+4');
    await page.locator('.check-stage, .check-cell').first().waitFor();
    await page.keyboard.press('m');
    await expect(page.locator('.corner-mark')).toHaveCount(4);
    const keys = page.locator('.footer-keys li');
    await expect(keys).toHaveCount(3);
    /** Keys that find no room wrap onto a line that isn't shown. */
    const lines = () => keys.evaluateAll((all) => new Set(all.map((each) => (each as HTMLElement).offsetTop)).size);
    const reason = page.locator('.not-yet-reason');
    const said = new Set<string>();
    const roomy = async () => {
      const why = (await reason.allTextContents()).join();
      said.add(why);
      expect([why, await lines()]).toEqual([why, 1]);
    };
    await roomy();
    const mark = async (at: number) => {
      await page.locator('.corner-mark').nth(at).focus();
      await page.keyboard.press('Enter');
    };
    for (const at of [0, 1, 2, 3]) {
      await roomy();
      await mark(at);
    }
    // The first corner beyond the second: the two are swapped.
    const middle = async (at: number) => {
      const box = (await page.locator('.corner-mark').nth(at).boundingBox())!;
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    };
    const [from, to] = [await middle(0), await middle(1)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x + 40, to.y, { steps: 4 });
    await page.mouse.up();
    await expect(reason).toHaveText(/Corners|Two corners|Ecken/);
    await roomy();
    await page.keyboard.press('l');
    await roomy();
    for (const at of [4, 5]) await mark(at);
    await expect(reason).toHaveText(/far|weit/);
    await roomy();
    await page.keyboard.press('c');
    await roomy();
    expect(said.size).toBeGreaterThan(4);
    await page.keyboard.press('Escape');
  }
});
