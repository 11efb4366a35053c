import type { Page } from '@playwright/test';
import { choose, expect, fixture, opened } from './app.ts';

/** `Check 4 · …`, in English, German, and with letters added. */
const checkName = /^(?:Check|Messung)n* \d+ ·/;

/** Every screen, and how to come to it from a piece that is open; no step depends on the language. */
export const screens: readonly { readonly name: string; readonly go: (page: Page) => Promise<void> }[] = [
  { name: 'Piece', go: (page) => page.keyboard.press('Control+1') },
  {
    name: 'Buying, hanging, finishing',
    go: async (page) => {
      await page.locator('.weft-list').waitFor();
      await page.keyboard.press('f');
      await expect(page.getByRole('dialog')).toBeVisible();
    },
  },
  {
    name: 'A yarn',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toHaveCount(0);
      await page.keyboard.press('y');
      await expect(page.getByRole('dialog')).toBeVisible();
    },
  },
  {
    name: 'The loom',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toHaveCount(0);
      await page.keyboard.press('l');
      await page.locator('dialog .sheet-action button').click();
      await expect(page.locator('.kept-loom-actions')).toBeVisible();
    },
  },
  {
    name: 'Cartoon',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+2');
      await page.locator('.cartoon-rulers').waitFor();
      await page.keyboard.press('n');
    },
  },
  { name: 'Order of work', go: (page) => page.keyboard.press('Control+3') },
  {
    name: 'Bench',
    go: async (page) => {
      await page.locator('[data-main-action][aria-disabled="false"]').click();
      await expect(page.locator('.bench-count')).toBeVisible();
    },
  },
  {
    name: 'Re-plan the rest',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('[data-main-action][aria-disabled="false"]').waitFor();
      await page.keyboard.press('r');
      const height = page.getByRole('dialog').getByRole('textbox');
      await height.fill('1.2');
      await page.keyboard.press('Enter');
      await expect(page.locator('dialog [role="status"] > :not(p)').first()).toBeVisible();
    },
  },
  {
    name: 'Loom check',
    go: async (page) => {
      await page.keyboard.press('Control+4');
      await expect(page.getByText(checkName)).toBeAttached();
      await expect(page.locator('.check-cell image').first()).toBeAttached({ timeout: 90_000 });
    },
  },
  {
    name: 'Record',
    go: async (page) => {
      await page.keyboard.press('Control+5');
      await expect(page.locator('.compare-slide image').first()).toBeAttached({ timeout: 90_000 });
    },
  },
  {
    name: 'Words and keys',
    go: async (page) => {
      await page.keyboard.press('F1');
      await expect(page.getByRole('dialog')).toBeVisible();
    },
  },
  {
    name: 'Find',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+k');
      await expect(page.getByRole('combobox')).toBeVisible();
    },
  },
  {
    name: 'Pieces',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+o');
      await expect(page.getByRole('dialog')).toBeVisible();
    },
  },
  {
    name: 'Can’t be measured',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+4');
      await expect(page.getByText(checkName)).toBeAttached();
      await choose(page, fixture('real/chessboards/left01.jpg'), () => page.keyboard.press('o'));
      await expect(page.locator('.cannot-measure-words')).toBeAttached({ timeout: 120_000 });
    },
  },
  {
    name: 'Corners, a length and a card',
    go: async (page) => {
      await page.keyboard.press('4');
      await expect(page.locator('.corner-mark')).toHaveCount(4);
      await page.keyboard.press('l');
      await page.keyboard.press('c');
      await expect(page.locator('.corner-mark')).toHaveCount(10);
    },
  },
  {
    name: 'Photographs of the piece',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Delete');
      await expect(page.getByText(checkName)).toBeAttached();
      await page.keyboard.press('h');
      await expect(page.locator('.photographs img').first()).toBeAttached();
    },
  },
  {
    name: 'The camera',
    go: async (page) => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Space');
      await expect(page.locator('.camera-view')).toBeAttached();
    },
  },
];

export async function openSample(page: Page): Promise<void> {
  await page.keyboard.press('l');
  await opened(page);
}

/** Opens it the other way: shown round. The tour is left again once it was looked at. */
export async function openSampleByTour(page: Page, look: () => Promise<void>): Promise<void> {
  await page.locator('.first-run-rows li:last-child button').click();
  await opened(page);
  await page.locator('.tour').waitFor();
  await look();
  await page.keyboard.press('Escape');
  await expect(page.locator('.tour')).toHaveCount(0);
}
