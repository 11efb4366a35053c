import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSampleByTour, screens } from './screens.ts';

/** Nothing that keeps anyone from reading or reaching what is on screen, by the rules axe knows. */
async function faults(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap((each) =>
    each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}: ${node.failureSummary}`),
  );
}

for (const theme of ['light', 'dark'] as const) {
  test(`axe finds nothing, ${theme}`, async ({ page }) => {
    test.setTimeout(420_000);
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
    expect.soft(await faults(page), 'First run').toEqual([]);
    await openSampleByTour(page, async () => expect.soft(await faults(page), 'The tour').toEqual([]));
    for (const { name, go } of screens) {
      await go(page);
      expect.soft(await faults(page), name).toEqual([]);
    }
  });
}
