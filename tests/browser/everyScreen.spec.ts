import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSample, screens } from './screens.ts';

/** Every line that is seen or read out: words, what fields hold, names of what has no words. */
const lines = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
    const found: string[] = [];
    for (const element of top.querySelectorAll<HTMLElement>('*')) {
      // The bar's own choice names both units.
      if (element.closest('.bar, style, script, option')) continue;
      const own = [...element.childNodes].flatMap((node) => (node.nodeType === 3 ? [node.textContent ?? ''] : []));
      found.push(own.join(' '), element.getAttribute('aria-label') ?? '', element.getAttribute('title') ?? '');
      if (element instanceof HTMLInputElement) found.push(element.value, element.placeholder);
    }
    return found.map((line) => line.replace(/\s+/g, ' ').trim()).filter((line) => line !== '');
  });

const other = {
  mm: /[\d¼½¾⅛⅜⅝⅞] ?in\b|\binch|\bZoll\b/,
  in: /\b[cm]m\b|[milc]+met(re|er)|\d ?m\b/i,
} as const;

/** Sheets that the usual round leaves out. */
const further: typeof screens = [
  {
    name: 'Ways of working',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+1');
      await page.locator('.piece-part-more button').nth(0).click();
    },
  },
  {
    name: 'Arithmetic',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('.piece-part-more button').nth(1).click();
    },
  },
  {
    name: 'Record as a table',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+5');
      await page.keyboard.press('t');
    },
  },
  {
    name: 'A check as a table',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+4');
      await page.locator('.check-cell image').first().waitFor({ state: 'attached', timeout: 90_000 });
      await page.keyboard.press('t');
    },
  },
];

/** Goes the whole round and says what of each screen is astray. */
async function everyScreen(page: Page, astray: (line: string) => boolean): Promise<void> {
  for (const { name, go } of [...further, ...screens]) {
    if (go === screens[0]!.go) await page.keyboard.press('Escape');
    await test.step(name, () => go(page));
    expect.soft((await lines(page)).filter(astray), name).toEqual([]);
    // A sheet opens at its head, whatever in it has the focus; on the loom's, something was pressed already.
    const down = await page.locator('dialog[open]').evaluateAll((open) => open.map((sheet) => sheet.scrollTop));
    if (name !== 'The loom')
      expect
        .soft(
          down.filter((px) => px > 0),
          `${name}, from its head`,
        )
        .toEqual([]);
  }
}

for (const units of ['mm', 'in'] as const) {
  test(`every screen keeps to one unit: ${units}`, async ({ page }) => {
    await openSample(page);
    await page.getByRole('radio', { name: units, exact: true }).click();
    await everyScreen(page, (line) => other[units].test(line));
  });
}

const english = /\b(the|of|and|is|are|to|from|with|enough|leave|each|not|mark|cut|edge|both|pass|turns?|ends?)\b/i;
/** Names and words of the sample's own, and what the weaver's browser says of a camera. */
const theirOwn = /lit lantern on an ink ground|stage \d \(rendered\)|^fake_device/;

test('every screen speaks German once it is chosen', async ({ page }) => {
  await page.getByRole('radio', { name: 'Deutsch' }).click();
  await openSample(page);
  await everyScreen(page, (line) => english.test(line) && !theirOwn.test(line));
});
