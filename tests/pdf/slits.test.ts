import { describe, expect, it } from 'vitest';
import { formInBox, plainShape } from '../../src/core/cartoon/newShape.ts';
import { mm } from '../../src/core/model/units.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { flatPiece } from '../chart/simplePiece.ts';
import { written } from './written.ts';

const bare = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });
const wall = (id: string, left: number, right: number, bottom: number, top: number) =>
  plainShape(id, id, 'y2', formInBox('rectangle', { left, right, bottom, top }));

/** One tall wall and three low ones: slits longer than the weaver allows, and shorter ones. */
const piece = {
  ...bare,
  making: { ...bare.making, slitLimit: mm(30) },
  shapes: [
    wall('Tall', -80, -60, 20, 70),
    wall('Low', -30, -12, 20, 42),
    wall('Lower', 6, 24, 20, 40),
    wall('Third', 48, 66, 60, 80),
  ],
};

describe('slits on paper', () => {
  it('are listed where something is to be done; the others are one line', async () => {
    const { slits } = planPiece(piece);
    const long = slits.filter((slit) => slit.lengthMm > 30);
    const short = slits.length - long.length;
    expect([long.length > 0, short > 1]).toEqual([true, true]);
    const lines = await written('order', piece, 'en');
    expect(lines.filter((line) => /^ends \d+ and \d+$/.test(line))).toHaveLength(long.length);
    expect(lines.filter((line) => line.includes('hort enough'))).toEqual([
      `Short enough to leave open: ${short} slits.`,
    ]);
    expect(await written('order', piece, 'de')).toContain(`Kurz genug, um offen zu bleiben: ${short} Schlitze.`);
  });

  it('take no page where all may stay open', async () => {
    const lines = await written('order', { ...piece, making: { ...piece.making, slitLimit: mm(80) } }, 'en');
    expect(lines).not.toContain('Slits');
  });
});
