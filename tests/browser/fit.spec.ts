import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { buildLongerWords, useLongerWords } from './longerWords.ts';
import { openSampleByTour, screens } from './screens.ts';

/** The named windows, and 1280 × 800 at 200 % zoom, which is 640 × 400 to the page. */
const windows = [
  { width: 1024, height: 700 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
  { width: 640, height: 400 },
] as const;

interface Setting {
  readonly name: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly theme: 'light' | 'dark';
  /** Brings the page to words or a size of words of its own, before anything is opened. */
  readonly set?: (page: Page) => Promise<void>;
}

/** Chooses something on the sheet of words and keys, as the weaver does. */
const choosing = (choice: string) => async (page: Page) => {
  await page.keyboard.press('F1');
  await page.getByRole('dialog').getByRole('radio', { name: choice }).click();
  await page.keyboard.press('Escape');
};

/** Words as they are, in German, and a third longer than the English, as in a language that needs more room. */
const tongues: readonly Pick<Setting, 'name' | 'set'>[] = [
  { name: '' },
  { name: ' in German', set: choosing('Deutsch') },
  { name: ' with words a third longer', set: useLongerWords },
];

/** Every window in every tongue, light and dark in turn; and the largest words. */
const everySetting: readonly Setting[] = [
  ...windows.flatMap((size, row) =>
    tongues.map(({ name, set }, column) => ({
      name: `${size.width} × ${size.height}${name}`,
      size,
      theme: (row + column) % 2 === 0 ? ('light' as const) : ('dark' as const),
      ...(set === undefined ? {} : { set }),
    })),
  ),
  { name: '1920 × 1080 with words at 150 %', size: windows[2], theme: 'light', set: choosing('150 %') },
];

/** What every run of the tests looks at; with PLUMBWEFT_FIT=all it is every setting, which takes many minutes. */
const usual = /^(640 × 400|1280 × 800 in German|1024 × 700 with words a third longer)$/;
const settings =
  process.env.PLUMBWEFT_FIT === 'all' ? everySetting : everySetting.filter(({ name }) => usual.test(name));

test.beforeAll(buildLongerWords);

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

/**
 * Words that lie over other words, as far as both can be seen. Words in a drawing, and names laid over a photograph on
 * purpose, are left out.
 */
function overlaps(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
    /** What is left of a box once everything that scrolls or clips around it has cut it. */
    const seen = (element: Element, box: DOMRect) => {
      let { left, right, top: upper, bottom } = box;
      for (let at: Element | null = element; at !== null; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (style.overflowX === 'visible' && style.overflowY === 'visible') continue;
        const frame = at.getBoundingClientRect();
        left = Math.max(left, frame.left);
        right = Math.min(right, frame.right);
        upper = Math.max(upper, frame.top);
        bottom = Math.min(bottom, frame.bottom);
      }
      return { left, right, top: upper, bottom };
    };
    const words: { readonly text: string; readonly fixed: boolean; readonly box: ReturnType<typeof seen> }[] = [];
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const element = node.parentElement;
      const text = (node.textContent ?? '').trim();
      if (text === '' || element === null || element.closest('svg, .out-of-sight, option, textarea, th')) continue;
      if (element.closest('.photograph, .four-points, .compare-slide, .close-look, .magnifier')) continue;
      const style = getComputedStyle(element);
      if (style.visibility === 'hidden' || Number(style.opacity) === 0) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      // Footer and bar stay while the work is scrolled beneath them.
      const fixed = element.closest('.footer, .bar') !== null;
      const letters = 0.72 * Number.parseFloat(style.fontSize);
      for (const { x, y, width, height } of range.getClientRects()) {
        // A line's box reaches above and below its letters.
        const box = seen(element, new DOMRect(x, y + (height - letters) / 2, width, letters));
        if (box.right - box.left > 1 && box.bottom - box.top > 1) words.push({ text, fixed, box });
      }
    }
    const found = new Set<string>();
    for (const [index, one] of words.entries()) {
      for (const other of words.slice(index + 1)) {
        if (one.text === other.text || one.fixed !== other.fixed) continue;
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const up = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        const line = Math.min(one.box.bottom - one.box.top, other.box.bottom - other.box.top);
        if (across > 2 && up > 0.25 * line)
          found.add(`"${one.text.slice(0, 30)}" lies over "${other.text.slice(0, 30)}"`);
      }
    }
    return [...found];
  });
}

const faults = async (page: Page) => [...(await misfits(page)), ...(await overlaps(page))];

for (const { name, size, theme, set } of settings) {
  test(`nothing is cut off at ${name}`, async ({ page }) => {
    await page.setViewportSize(size);
    await page.emulateMedia({ colorScheme: theme });
    await set?.(page);
    expect.soft(await faults(page), 'First run').toEqual([]);
    await openSampleByTour(page, async () => expect.soft(await faults(page), 'The tour').toEqual([]));
    for (const { name, go } of screens) {
      await test.step(name, () => go(page));
      expect.soft(await faults(page), name).toEqual([]);
    }
  });
}
