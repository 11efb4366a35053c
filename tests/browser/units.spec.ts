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
  in: /\bmm\b|millimet/i,
} as const;

/** Sheets that the usual round leaves out: ways of working, arithmetic, and figures as a table. */
const further: typeof screens = [
  {
    name: 'Ways of working',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+1');
      await page.getByRole('button', { name: 'Ways of working' }).click();
    },
  },
  {
    name: 'Arithmetic',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Arithmetic' }).first().click();
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

for (const units of ['mm', 'in'] as const) {
  test(`every screen keeps to one unit: ${units}`, async ({ page }) => {
    await openSample(page);
    await page.getByRole('radio', { name: units, exact: true }).click();
    for (const { name, go } of [...further, ...screens]) {
      if (go === screens[0]!.go) await page.keyboard.press('Escape');
      await test.step(name, () => go(page));
      if (further.some((each) => each.name === name)) await expect(page.getByRole('dialog')).toBeVisible();
      const astray = (await lines(page)).filter((line) => other[units].test(line));
      expect.soft(astray, name).toEqual([]);
    }
  });
}
