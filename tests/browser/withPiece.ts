import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, type Page } from '@playwright/test';
import type { Piece } from '../../src/core/model/piece.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { createPiece } from '../../src/main/store/createPiece.ts';
import { opened } from './app.ts';

/** A test whose home holds one piece from the start. The home outlives the program. */
export const testWithPiece = (piece: Piece) =>
  base.extend<{ home: string }>({
    // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the fixtures it needs from this pattern.
    home: async ({}, use) => {
      const home = mkdtempSync(join(tmpdir(), 'plumbweft-browser-'));
      mkdirSync(join(home, 'pieces'));
      const made = await createPiece(realStorePorts(), join(home, 'pieces', 'Piece'), piece);
      if (!made.ok) throw new Error(made.problem.sentence);
      await use(home);
      rmSync(home, { recursive: true, force: true, maxRetries: 5 });
    },
  });

/** Opens that piece, on its order of work. */
export async function openOrder(page: Page, address: string, name: string): Promise<void> {
  page.on('filechooser', () => undefined);
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.locator('.first-run-recent button, .first-run button').filter({ hasText: name }).first().click();
  await opened(page);
  await page.keyboard.press('Control+3');
  await page.getByRole('button', { name: /^Weave block \d+$/ }).waitFor();
}
