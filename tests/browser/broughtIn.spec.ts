import { expect, fixture, test } from './app.ts';
import { carryOver } from './dropFile.ts';
import { openSample } from './screens.ts';

test('what is dropped on the cartoon is traced or drawn, ornaments are put on it, and a measured beat is taken over', async ({
  page,
}) => {
  const shapes = page.locator('.shape-row');
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
  await openSample(page);
  await page.keyboard.press('Control+2');
  await expect(shapes).toHaveCount(3);

  // A picture is traced in the piece's own yarns, and seen before it is put on the cloth.
  const picture = await carryOver(page, fixture('drawings/harbour.jpg'));
  await expect(page.getByText('Let it go here', { exact: false })).toBeVisible();
  await picture.letFall();
  const sheet = page.getByRole('dialog', { name: 'Trace a picture' });
  await expect(sheet.getByText('3 areas, besides the ground.')).toBeVisible();
  // The ground takes half of this picture or more; without the cream, its areas go to other yarns.
  const shares = (await sheet.locator('.trace-yarns .second').allTextContents()).map((text) =>
    Number.parseInt(text, 10),
  );
  expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThanOrEqual(99);
  expect(shares[0]).toBeGreaterThan(45);
  await sheet.getByRole('checkbox').nth(1).click();
  await expect(sheet.getByText('3 areas, besides the ground.')).toHaveCount(0);
  await sheet.getByRole('checkbox').nth(1).click();
  await sheet.getByRole('button', { name: 'Put it on the cloth' }).click();
  await expect(shapes).toHaveCount(6);
  await page.keyboard.press('Control+Z');
  await expect(shapes).toHaveCount(3);

  // A drawing that is dropped comes in as shapes; its cream is not quite the yarn's, and that is said.
  await (await carryOver(page, fixture('drawings/boat.svg'))).letFall();
  await expect(shapes).toHaveCount(6);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+Z');
  await expect(shapes).toHaveCount(3);

  // Ornaments stand on the cloth at once, with what holds them and what to take care of.
  for (const kind of ['Wrapped flower', 'Felted leaf']) {
    await button('Ornament').click();
    await button(new RegExp(`^${kind}`)).click();
    await expect(page.getByRole('heading', { level: 1, name: kind })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Take care' })).toBeAttached();
  }
  await expect(page.locator('.ornament')).toHaveCount(2);
  await page.keyboard.press('Delete');
  await expect(page.locator('.ornament')).toHaveCount(1);
  await page.keyboard.press('Control+1');
  await page.locator('.weft-list').waitFor();
  await page.keyboard.press('f');
  await expect(page.getByRole('dialog')).toContainText('Fasten 1 ornament where the plan puts them.');
  await page.keyboard.press('Escape');

  // A plan that differs from the measured beat is offered the beat, and told what that changes.
  await page.keyboard.press('g');
  const height = page.getByRole('textbox', { name: 'Height of a pass' });
  await height.fill('1.14');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+2');
  await button(/^Use this beat: 1\.0\d\smm a pass$/).click();
  const replan = page.getByRole('dialog', { name: 'Re-plan the rest' });
  await expect(replan.getByRole('row', { name: /^Whole cloth/ })).toContainText(/260\smm2[34]\d\smm260\smm/);
  await replan.getByRole('button', { name: 'Plan it anew' }).click();
  await expect(page.getByRole('list', { name: /Blocks in the order/ })).toBeVisible();
  await page.keyboard.press('Control+2');
  await expect(button('Print at true size')).toBeVisible();
  await expect(button(/^Use this beat/)).toHaveCount(0);
});
