import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { fixture } from './app.ts';

/** What the stand-in camera does with the photograph before it. */
type Hold = 'still' | 'shaking';

interface Shown {
  /** A JPEG in base 64. */
  readonly picture: string;
  readonly hold: Hold;
}

/**
 * Puts a camera in the page's hands that shows photographs of ours, so many pictures a second, grain and all. The page
 * asks for it, and takes pictures of it, the way it does with any other.
 */
export async function plugInCamera(page: Page, picturesPerSecond: number): Promise<void> {
  await page.evaluate((rate) => {
    const canvas = document.createElement('canvas');
    const pen = canvas.getContext('2d')!;
    const wall = { image: null as ImageBitmap | null, hold: 'still', count: 0 };
    Object.assign(window, {
      showToCamera: async ({ picture, hold }: { picture: string; hold: string }) => {
        const bytes = Uint8Array.from(atob(picture), (letter) => letter.charCodeAt(0));
        const image = await createImageBitmap(new Blob([bytes]));
        canvas.width = image.width;
        canvas.height = image.height;
        Object.assign(wall, { image, hold });
      },
    });
    setInterval(() => {
      if (wall.image === null) return;
      wall.count++;
      const shift = wall.hold === 'shaking' ? 40 * (wall.count % 2) : 0;
      pen.drawImage(wall.image, shift, 0);
      // One pixel that changes makes a new picture of the same thing.
      pen.fillStyle = wall.count % 2 === 0 ? '#101010' : '#141414';
      pen.fillRect(0, 0, 1, 1);
    }, 1000 / rate);
    navigator.mediaDevices.getUserMedia = async () => canvas.captureStream();
  }, picturesPerSecond);
}

/** Holds one of the fixtures before the camera, so many pixels wide. */
export async function showToCamera(page: Page, path: string, width: number, hold: Hold = 'still'): Promise<void> {
  const jpeg = await sharp(fixture(path)).resize({ width }).jpeg({ quality: 92 }).toBuffer();
  const shown: Shown = { picture: jpeg.toString('base64'), hold };
  await page.evaluate(
    (what) => (window as unknown as { showToCamera: (shown: Shown) => Promise<void> }).showToCamera(what),
    shown,
  );
}
