import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, fixture, measured, test } from './app.ts';
import { openSample } from './screens.ts';

/** One frame over and over: what a camera on a stand sees. A film of JPEGs, as the browser's stand-in camera reads it. */
const film = join(mkdtempSync(join(tmpdir(), 'plumbweft-film-')), 'loom.mjpeg');

test.beforeAll(async () => {
  const frame = await sharp(fixture('sequence/seq3.jpg')).resize({ width: 1440 }).jpeg({ quality: 92 }).toBuffer();
  writeFileSync(film, Buffer.concat(Array.from({ length: 5 }, () => frame)));
});

test.use({
  permissions: ['camera'],
  launchOptions: async ({ launchOptions }, use) => {
    await use({
      ...launchOptions,
      args: [
        ...(launchOptions.args ?? []),
        '--use-fake-device-for-media-stream',
        '--use-fake-ui-for-media-stream',
        `--use-file-for-fake-video-capture=${film}`,
      ],
    });
  },
});

test('the camera takes the loom by itself once it is still, and the draw-in is read and kept, by keyboard', async ({
  page,
}) => {
  await openSample(page);
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await page.keyboard.press('Space');
  await expect(page.getByRole('checkbox', { name: /by itself/ })).toBeChecked();
  // It is not pressed: still and clear for long enough, the picture is taken.
  await measured(page);
  await expect(page.getByText(/mm in/).first()).toBeVisible();
  await page.keyboard.press('k');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
});
