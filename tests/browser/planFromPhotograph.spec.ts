import type { Page } from '@playwright/test';
import { choose, expect, fixture, measured, opened, test } from './app.ts';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const main = (page: Page) => page.locator('[data-main-action]');

test('a wrong count is mended on Piece, and the same photograph is then measured', async ({ page }) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('w');
  const ends = page.getByRole('textbox', { name: 'Ends', exact: true });
  const right = await ends.inputValue();
  await ends.fill(String(Number(right) - 6));
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+4');
  await expect(page.getByText(/^Check \d+ ·/)).toBeVisible();
  await choose(page, fixture('sequence/seq3.jpg'), () => page.keyboard.press('o'));
  await expect(page.getByRole('heading', { name: /The plan has \d+ ends; the picture shows/ })).toBeVisible({
    timeout: 180_000,
  });
  await expect(main(page)).toHaveText('Change the warp');
  await expect(button(page, 'Photograph again')).toBeVisible();
  await expect(page.locator('.cannot-measure-ways').getByRole('button', { name: 'Mark four points' })).toBeVisible();

  // The field to change has the focus: it can be typed over at once.
  await main(page).click();
  await expect(ends).toBeFocused();
  await page.keyboard.type(right);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('Control+4');
  await expect(page.getByText('Measure it again.', { exact: true })).toBeVisible();
  await expect(main(page)).toHaveText('Measure it again');
  await main(page).click();
  await measured(page);
});

test('where the newest check shows more woven than is ticked, the order of work says so and counts up to there', async ({
  page,
}) => {
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+3');
  const note = page.getByRole('status').filter({ hasText: 'Check 4' });
  await expect(note).toContainText(/shows more woven than is ticked: block \d+, turn \d+, give or take/);
  await expect(main(page)).toHaveText('Weave block 1');
  const [, block] = /block (\d+)/.exec((await note.textContent()) ?? '') ?? [];
  await note.getByRole('button', { name: 'Tick up to there' }).click();
  await expect(main(page)).toHaveText(`Weave block ${block}`);
  await expect(note).toContainText('Ticked as far as check 4 shows.');
  // The height that the check read is that of the fell now drawn.
  const fell = Number(await page.locator('.fell-mark text').last().textContent());
  expect(Math.abs(fell - 175)).toBeLessThan(4);
  await note.getByRole('button', { name: 'Take it back' }).click();
  await expect(main(page)).toHaveText('Weave block 1');
  await expect(note).toContainText('more woven than is ticked');
  // It can still be taken back after a look at another screen.
  await note.getByRole('button', { name: 'Tick up to there' }).click();
  await page.keyboard.press('Control+1');
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('Control+3');
  await note.getByRole('button', { name: 'Take it back' }).click();
  await expect(main(page)).toHaveText('Weave block 1');
  // Once the hand has counted on from there, the count is the weaver's own, and there is nothing to say.
  await note.getByRole('button', { name: 'Tick up to there' }).click();
  await main(page).click();
  await page.locator('.bench-far').waitFor();
  await page.keyboard.press('Space');
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Escape');
  await page.locator('.order-list').waitFor();
  await page.waitForLoadState('networkidle');
  await expect(main(page)).toHaveText(`Weave block ${block}`);
  await expect(note).toHaveCount(0);
});

for (const size of [
  { width: 1280, height: 800 },
  { width: 1024, height: 700 },
]) {
  test(`what can be done stays in view in German at ${size.width} × ${size.height}, and plots don’t scroll`, async ({
    page,
  }) => {
    await page.setViewportSize(size);
    await page.getByRole('radio', { name: 'Deutsch' }).click();
    await page.keyboard.press('l');
    await opened(page);
    await page.keyboard.press('Control+4');
    await page.locator('.check-further button').first().waitFor();
    const footer = (await page.locator('.footer').boundingBox())!;
    for (const each of await page.locator('.check-further button').all()) {
      const box = (await each.boundingBox())!;
      expect(box.y + box.height).toBeLessThanOrEqual(footer.y);
    }
    await page.keyboard.press('Control+5');
    await page.locator('.trend-box canvas').first().waitFor();
    const said = page.locator('.record-said');
    await expect.poll(() => said.evaluate((box) => box.scrollHeight - box.clientHeight)).toBeLessThanOrEqual(1);
    // Beside or above each other, never one over the other, once both names are laid out.
    const overlap = async (): Promise<boolean> => {
      const earlier = await page.locator('.compare-name').nth(0).boundingBox();
      const later = await page.locator('.compare-name.is-later').boundingBox();
      if (!earlier || !later) return true;
      return earlier.x + earlier.width > later.x && earlier.y + earlier.height > later.y;
    };
    await expect.poll(overlap).toBe(false);
  });
}

test('at the bench the widths under the tally and what is to go stand on one line', async ({ page }) => {
  await page.setViewportSize({ width: 1920, height: 1080 });
  await page.keyboard.press('l');
  await opened(page);
  await page.keyboard.press('Control+3');
  await main(page).click();
  await page.locator('.bench-far').waitFor();
  const baseline = (place: string) =>
    page
      .locator(place)
      .first()
      .evaluate((words) => {
        // An empty inline block stands on the baseline of the words it follows.
        const mark = document.createElement('span');
        mark.style.display = 'inline-block';
        words.append(mark);
        const { bottom } = mark.getBoundingClientRect();
        mark.remove();
        return bottom;
      });
  expect(Math.abs((await baseline('.tally-ends')) - (await baseline('.bench-far')))).toBeLessThan(0.5);
});
