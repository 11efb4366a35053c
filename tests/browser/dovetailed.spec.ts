import type { Page } from '@playwright/test';
import { formInBox, plainShape } from '../../src/core/cartoon/newShape.ts';
import { flatPiece } from '../chart/simplePiece.ts';
import { expect, startApp } from './app.ts';
import { openOrder, testWithPiece } from './withPiece.ts';

const bare = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });
const form = formInBox('rectangle', { left: -40, right: 45, bottom: 20, top: 80 });
const shape = { ...plainShape('a', 'Wall', 'y2', form), boundary: 'dovetailed' as const };
const test = testWithPiece({ ...bare, name: 'Dovetailed wall', shapes: [shape] });

async function toBench(page: Page, address: string): Promise<void> {
  await openOrder(page, address, 'Dovetailed wall');
  await page.keyboard.press('Enter');
  await page.locator('.bench-count').waitFor();
}

const said = async (page: Page) => ({
  far: await page.locator('.bench-far').textContent(),
  count: await page.locator('.bench-count').textContent(),
  of: await page.locator('.bench-over').textContent(),
  next: await page.locator('.bench-next').textContent(),
  rounds: await page.locator('.bench-round').first().textContent(),
});

async function turnDone(page: Page): Promise<void> {
  const before = await page.locator('.bench-far').textContent();
  await Promise.all([page.waitForResponse(/saveProgress/), page.keyboard.press('Space')]);
  await expect(page.locator('.bench-far')).not.toHaveText(before ?? '');
}

test('a dovetailed wall is one repeat of four rounds, and goes on in the same round after the program was killed', async ({
  page,
  home,
}) => {
  const first = await startApp(home);
  await toBench(page, first.address);
  // Header, foot, and the rounds before the two edges have found their beat.
  for (let turn = 0; turn < 27; turn++) await turnDone(page);
  await expect(page.getByRole('heading', { name: 'Repeat these 4 rounds 6 times:' })).toBeVisible();
  await expect(page.locator('.bench-count')).toHaveText('1');
  await expect(page.locator('.bench-over')).toContainText('of 6 repeats');
  await expect(page.locator('.bench-repeat > li')).toHaveCount(4);
  await expect(page.locator('.bench-next')).toHaveText('Then round 2.');
  await expect(page.locator('.bench-repeat > li').nth(1)).toContainText('10 to 24');
  // One whole repeat and a round and a half.
  for (let turn = 0; turn < 16 + 6; turn++) await turnDone(page);
  await expect(page.locator('.bench-count')).toHaveText('2');
  await expect(page.locator('.bench-repeat > [aria-current]')).toContainText(/^2/);
  // Nothing of it lies below the fold.
  for (const size of [
    { width: 1024, height: 700 },
    { width: 1280, height: 800 },
  ]) {
    await page.setViewportSize(size);
    await expect(page.locator('.bench-repeat > li').last()).toBeInViewport({ ratio: 1 });
    const bar = await page.locator('.bench-bar').boundingBox();
    await expect(page.locator('.bench-far')).toBeInViewport({ ratio: 1 });
    const far = (await page.locator('.bench-far').boundingBox())!;
    expect(far.y + far.height).toBeLessThanOrEqual(bar!.y);
    const last = await page.locator('.bench-repeat > li').last().boundingBox();
    expect(last!.y + last!.height).toBeLessThanOrEqual(bar!.y);
  }
  const now = await said(page);
  first.process.kill('SIGKILL');

  const second = await startApp(home);
  await toBench(page, second.address);
  expect(await said(page)).toEqual(now);
  await turnDone(page);
  expect(await said(page)).not.toEqual(now);
  await page.keyboard.press('Backspace');
  await expect.poll(() => said(page)).toEqual(now);
  second.process.kill('SIGTERM');
});
