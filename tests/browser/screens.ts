import type { Page } from '@playwright/test';
import { choose, expect, fixture, opened } from './app.ts';

/** Every screen, and how to come to it from a piece that is open. */
export const screens: readonly { readonly name: string; readonly go: (page: Page) => Promise<void> }[] = [
  { name: 'Piece', go: (page) => page.keyboard.press('Control+1') },
  { name: 'Cartoon', go: (page) => page.keyboard.press('Control+2') },
  { name: 'Order of work', go: (page) => page.keyboard.press('Control+3') },
  {
    name: 'Loom check',
    go: async (page) => {
      await page.keyboard.press('Control+4');
      await expect(page.getByText(/^Check \d+ ·/)).toBeAttached();
      await expect(page.locator('.check-cell image').first()).toBeAttached();
    },
  },
  {
    name: 'Record',
    go: async (page) => {
      await page.keyboard.press('Control+5');
      await expect(page.locator('.compare-slide image').first()).toBeAttached();
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
      await expect(page.getByText(/^Check \d+ ·/)).toBeAttached();
      await choose(page, fixture('real/chessboards/left01.jpg'), () => page.keyboard.press('o'));
      await expect(page.getByText('Nothing has been guessed and nothing saved.')).toBeAttached({ timeout: 180_000 });
    },
  },
  {
    name: 'Four points',
    go: async (page) => {
      await page.keyboard.press('4');
      await expect(page.getByRole('button', { name: /^Inner corner/ })).toHaveCount(4);
    },
  },
];

export async function openSample(page: Page): Promise<void> {
  await page.keyboard.press('l');
  await opened(page);
}
