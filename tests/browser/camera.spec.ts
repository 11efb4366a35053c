import type { Page } from '@playwright/test';
import { expect, measured, test } from './app.ts';
import { openSample } from './screens.ts';
import { plugInCamera, showToCamera } from './standInCamera.ts';

const sentence = (page: Page) => page.getByRole('heading', { level: 1 });
const byItself = (page: Page) => page.getByRole('checkbox', { name: /by itself/ });
/** The trigger waits for a second or so; a busy machine takes longer over its pictures. */
const soon = { timeout: 25_000 };

async function openCamera(page: Page): Promise<void> {
  await openSample(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await page.keyboard.press('Space');
}

test('a slow camera takes the loom by itself once it is still, and the draw-in is read and kept, by keyboard', async ({
  page,
}) => {
  await plugInCamera(page, 3);
  await showToCamera(page, 'sequence/seq3.jpg', 1080, 'shaking');
  await openCamera(page);
  await expect(byItself(page)).toBeChecked();
  await expect(sentence(page)).toHaveText(/picture moves/, soon);
  // It is not pressed: still and clear for long enough, the picture is taken.
  await showToCamera(page, 'sequence/seq3.jpg', 1080);
  await expect(sentence(page)).toHaveText('Reading the photograph.', soon);
  await measured(page);
  await expect(page.getByText(/mm in/).first()).toBeVisible();
  await page.keyboard.press('k');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
});

test('a picture that can’t be measured says so, and the next one waits for the weaver', async ({ page }) => {
  await plugInCamera(page, 10);
  await showToCamera(page, 'real/chessboards/left01.jpg', 640);
  await openCamera(page);
  await expect(page.getByText('Nothing has been guessed and nothing saved.')).toBeVisible({ timeout: 60_000 });
  await page.keyboard.press('Space');
  await expect(byItself(page)).not.toBeChecked();
  await expect(sentence(page)).toHaveText('Still and clear.', soon);
  await showToCamera(page, 'sequence/seq3.jpg', 1080);
  await page.keyboard.press('Space');
  await expect(sentence(page)).toHaveText('Reading the photograph.', soon);
  await page.keyboard.press('Escape');
});

test('a camera that another program holds is asked again', async ({ page }) => {
  await plugInCamera(page, 10);
  await showToCamera(page, 'sequence/seq3.jpg', 640);
  await page.evaluate(() => {
    const free = navigator.mediaDevices.getUserMedia;
    let asked = 0;
    navigator.mediaDevices.getUserMedia = async (wanted) => {
      asked++;
      if (asked === 1) throw new DOMException('held', 'NotReadableError');
      return free.call(navigator.mediaDevices, wanted);
    };
  });
  await openCamera(page);
  await page.keyboard.press('s');
  await expect(sentence(page)).toHaveText(/does not answer yet/, soon);
  await expect(sentence(page)).toHaveText('Still and clear.', soon);
});
