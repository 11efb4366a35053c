import { expect, test } from 'vitest';
import { openingDiffers } from '../../src/core/photo/doubtedPlan.ts';
import { expectedOf } from '../../src/core/photo/expected.ts';
import { lantern } from '../support/pieces.ts';

test('a doubted opening singles out the side that differs', () => {
  const plan = expectedOf(lantern());
  const seen = (wide: number, high: number) => {
    const found = openingDiffers(plan, {
      ...plan,
      openingWidth: wide * plan.openingWidth,
      openingHeight: high * plan.openingHeight,
    });
    return found && !found.ok ? found.problem.figure : null;
  };
  expect(seen(1.15, 1)).toBe('openingWidth');
  expect(seen(1, 0.85)).toBe('openingHeight');
  expect(seen(1.1, 1.3)).toBe('openingWidth');
  expect(seen(1.01, 0.99)).toBe(null);
});
