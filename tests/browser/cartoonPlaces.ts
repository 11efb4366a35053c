import type { Page } from '@playwright/test';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A straight line through two marks of a ruler: from what is written on it to where it stands on the screen. */
const along =
  (low: readonly [number, number], high: readonly [number, number]) =>
  (value: number): number =>
    low[1] + ((value - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);

/** Where an end and a height lie on the screen, read off the cartoon's own rulers. */
export async function placesOnCloth(page: Page): Promise<(end: number, height: number) => Place> {
  await page.locator('.cartoon-rulers text').first().waitFor();
  const marks = await page.locator('.cartoon-rulers text').evaluateAll((texts) =>
    texts.map((text) => {
      const box = text.getBoundingClientRect();
      return {
        said: Number(text.textContent),
        ruler: text.classList.contains('is-end') ? 'height' : text.classList.contains('is-middle') ? 'end' : 'turns',
        x: box.x + box.width / 2,
        y: box.y + box.height / 2,
      };
    }),
  );
  const ends = marks.filter((mark) => mark.ruler === 'end');
  const heights = marks.filter((mark) => mark.ruler === 'height' && Number.isFinite(mark.said));
  const [first, last] = [ends[0]!, ends.at(-1)!];
  const [low, high] = [heights[0]!, heights.at(-1)!];
  const x = along([first.said, first.x], [last.said, last.x]);
  const y = along([low.said, low.y], [high.said, high.y]);
  return (end, height) => ({ x: x(end), y: y(height) });
}
