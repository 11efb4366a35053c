import { formInBox, plainShape } from '../../src/core/cartoon/newShape.ts';
import { mm } from '../../src/core/model/units.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { flatPiece } from '../chart/simplePiece.ts';
import { expect, startApp } from './app.ts';
import { openOrder, testWithPiece } from './withPiece.ts';

const bare = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });
const wall = (name: string, left: number, right: number, bottom: number, top: number) =>
  plainShape(name, name, 'y2', formInBox('rectangle', { left, right, bottom, top }));
const piece = {
  ...bare,
  name: 'Four walls',
  making: { ...bare.making, slitLimit: mm(30) },
  shapes: [
    wall('Tall', -80, -60, 20, 70),
    wall('Low', -30, -12, 20, 42),
    wall('Lower', 6, 24, 20, 40),
    wall('Third', 48, 66, 60, 80),
  ],
};
const test = testWithPiece(piece);

test('slits to do something about are listed; the others fold into one line, and open', async ({ page, home }) => {
  const app = await startApp(home);
  await openOrder(page, app.address, piece.name);
  await page.keyboard.press('s');
  const sheet = page.getByRole('dialog', { name: 'Slits and overhangs' });
  const { slits } = planPiece(piece);
  const long = slits.filter((slit) => slit.lengthMm > 30).length;
  const short = slits.length - long;
  const rows = sheet.getByText(/^Between ends \d+ and \d+:/);
  await expect(rows).toHaveCount(long);
  await expect(sheet.getByText(`${short} more are short enough to leave open.`)).toBeVisible();
  await sheet.getByRole('button', { name: 'Show them' }).click();
  await expect(rows).toHaveCount(slits.length);
  await sheet.getByRole('button', { name: 'Fold them' }).click();
  await expect(rows).toHaveCount(long);
  app.process.kill('SIGTERM');
});
