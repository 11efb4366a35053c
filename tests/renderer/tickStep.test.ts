import fc from 'fast-check';
import { expect, it } from 'vitest';
import { tickStep } from '../../src/renderer/screens/record/tickStep.ts';

const reach = fc.double({ min: 1.1, max: 60, noNaN: true });

it('ticks stand where they say: at fractions of an inch, or round figures', () => {
  expect(tickStep(4.4, 'mm')).toBe(2);
  expect(tickStep(4.4, 'fraction')).toBeCloseTo(25.4 / 8, 9);
  expect(tickStep(0.2, 'decimal-inch')).toBeCloseTo(0.005 * 25.4, 9);
  fc.assert(
    fc.property(reach, (mm) => {
      const parts = (tickStep(mm, 'fraction') / 25.4) * 32;
      expect(Math.abs(parts - Math.round(parts))).toBeLessThan(1e-9);
    }),
  );
});

it('and inside the plot, not all by the plan', () => {
  fc.assert(
    fc.property(reach, fc.constantFrom('mm', 'fraction', 'decimal-inch'), (mm, read) => {
      expect(tickStep(mm, read)).toBeLessThan(mm);
      expect(tickStep(mm, read)).toBeGreaterThan(0.29 * mm);
    }),
  );
});
