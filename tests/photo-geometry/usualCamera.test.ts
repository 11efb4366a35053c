import { expect, it } from 'vitest';
import { usualCamera } from '../../src/core/photo/coarseCamera.ts';

it('a focal length that the file tells takes the usual one’s place, however the picture is turned', () => {
  const focal = (size: Parameters<typeof usualCamera>[0]): number => Math.exp(usualCamera(size).logFocal);
  expect(focal({ width: 3000, height: 4000 })).toBeCloseTo(3320);
  expect(focal({ width: 3000, height: 4000, focal: 1.8 })).toBeCloseTo(9000);
  expect(focal({ width: 4000, height: 3000, focal: 1.8 })).toBeCloseTo(9000);
});
