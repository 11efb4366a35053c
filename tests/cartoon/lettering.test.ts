import { describe, expect, it } from 'vitest';
import { shapeArea } from '../../src/core/cartoon/area.ts';
import { covers, outlinesOf } from '../../src/core/cartoon/outline.ts';
import { shapeBox } from '../../src/core/cartoon/shapeBox.ts';
import type { ShapeForm } from '../../src/core/model/piece.ts';
import { letteringCommands } from '../../src/main/typefaces/lettering.ts';
import { shapeOf } from './shapes.ts';

const cloth = { left: -100, right: 100, bottom: 0, top: 200 };
const lettered = (text: string, height: number, face: 'plain' | 'strong' | 'heading' = 'strong') => {
  const made = letteringCommands(text, face, height);
  if (!made.ok) throw new Error(made.problem.tag);
  const form: ShapeForm = { kind: 'path', commands: made.value.commands, fillRule: 'nonzero', origin: 'lettering' };
  return { shape: shapeOf(form), told: made.value.told };
};

describe('lettering', () => {
  it('stands on its baseline, a capital as tall as asked', () => {
    for (const face of ['plain', 'strong', 'heading'] as const) {
      const box = shapeBox(lettered('H', 40, face).shape, cloth)!;
      expect(box.bottom).toBeCloseTo(0, 1);
      expect(box.top).toBeCloseTo(40, 1);
    }
  });
  it('keeps the hole of an O and the dot of an i', () => {
    const o = lettered('O', 40).shape;
    const box = shapeBox(o, cloth)!;
    const [outline] = outlinesOf(o, cloth);
    expect(covers(outline!, (box.left + box.right) / 2, 20)).toBe(false);
    expect(covers(outline!, box.left + 2, 20)).toBe(true);
    expect(shapeArea(lettered('ı', 40).shape, cloth)).toBeLessThan(shapeArea(lettered('i', 40).shape, cloth));
  });
  it('is twice as large when asked, and longer with more letters', () => {
    const area = (text: string, height: number) => shapeArea(lettered(text, height).shape, cloth);
    expect(area('Fa', 40) / area('Fa', 20)).toBeCloseTo(4, 1);
    const width = (text: string) => {
      const box = shapeBox(lettered(text, 20).shape, cloth)!;
      return box.right - box.left;
    };
    expect(width('HH')).toBeGreaterThan(1.7 * width('H'));
  });
  it('sets lines under one another', () => {
    expect(shapeBox(lettered('H\nH', 20).shape, cloth)!.bottom).toBeCloseTo(-32, 1);
  });
  it('knows Czech, Greek and Cyrillic letters, and says what it lacks', () => {
    for (const text of ['Č', 'ř', 'Ω', 'Л']) expect(shapeArea(lettered(text, 30).shape, cloth)).toBeGreaterThan(10);
    expect(lettered('A麻', 30).told.join(' ')).toContain('麻');
    const none = letteringCommands('麻 ', 'plain', 30);
    expect(none.ok ? '' : none.problem.tag).toBe('lettering-empty');
    const empty = letteringCommands('', 'plain', 30);
    expect(empty.ok ? '' : empty.problem.tag).toBe('lettering-empty');
  });
});
