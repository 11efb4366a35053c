import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { openSample, screens } from './screens.ts';

/** The named windows, and 1280 × 800 at 200 % zoom, which is 640 × 400 to the page. */
const windows = [
  { width: 1024, height: 700 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
  { width: 640, height: 400 },
] as const;

/**
 * What is cut off or too small: things reaching past the window's sides, words in a box too narrow for them, words under
 * 14 px. Drawings, which pan and zoom, and rows made to scroll sideways are left out.
 */
function misfits(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > width + 1) {
      found.push(`the page is ${document.documentElement.scrollWidth} wide in a window of ${width}`);
    }
    const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
    for (const element of top.querySelectorAll<HTMLElement>('button, h1, h2, h3, p, label, th, td, dt, dd, li, span')) {
      if (element.closest('.out-of-sight, .photograph, .four-points, .timeline, .compare-slide, .height-axis, svg'))
        continue;
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      const words = (element.textContent ?? '').trim();
      if (words === '') continue;
      const style = getComputedStyle(element);
      if (style.visibility === 'hidden') continue;
      const name = `${element.tagName.toLowerCase()} "${words.slice(0, 40)}"`;
      const scrolls = element.closest('.footer-keys, .sheet-dialog');
      if (!scrolls && (box.right > width + 1 || box.left < -1))
        found.push(`${name} reaches ${box.left}..${box.right} of ${width}`);
      const own = [...element.childNodes].some((node) => node.nodeType === 3 && (node.textContent ?? '').trim() !== '');
      if (own && Number.parseFloat(style.fontSize) < 14) found.push(`${name} is ${style.fontSize}`);
      const clipped = style.overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1;
      if (clipped && style.textOverflow !== 'ellipsis' && style.webkitLineClamp === 'none')
        found.push(`${name} is cut`);
    }
    return found;
  });
}

for (const size of windows) {
  test(`nothing is cut off at ${size.width} × ${size.height}`, async ({ page }) => {
    await page.setViewportSize(size);
    expect.soft(await misfits(page), 'First run').toEqual([]);
    await openSample(page);
    for (const { name, go } of screens) {
      await go(page);
      expect.soft(await misfits(page), name).toEqual([]);
    }
  });
}
