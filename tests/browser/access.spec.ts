import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSampleByTour, screens } from './screens.ts';

/** No frame of another origin is ever shown, so that axe may look from the page itself: half the time. */
const axe = (page: Page) => new AxeBuilder({ page }).setLegacyMode(true);

const told = ({ violations }: Awaited<ReturnType<AxeBuilder['analyze']>>): readonly string[] =>
  violations.flatMap((each) =>
    each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}: ${node.failureSummary}`),
  );

/** Nothing that keeps anyone from reading or reaching what is on screen, by the rules axe knows; in the dark, by those of colour. */
async function noFaults(page: Page, screen: string): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  expect.soft(told(await axe(page).analyze()), `${screen}, light`).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect.soft(told(await axe(page).withRules('color-contrast').analyze()), `${screen}, dark`).toEqual([]);
}

test('axe finds nothing, light and dark', async ({ page }) => {
  test.setTimeout(420_000);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await noFaults(page, 'First run');
  await openSampleByTour(page, () => noFaults(page, 'The tour'));
  for (const { name, go } of screens) {
    await go(page);
    await noFaults(page, name);
  }
});
