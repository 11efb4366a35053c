import { expect, test } from 'vitest';
import { turnedOver } from '../../src/main/vision/turnedOver.ts';

const cameras = [
  { name: 'Front', mirrors: true },
  { name: null, mirrors: false },
];

test('what was said of a camera is sure of its pictures; of pictures that name none it is only likely', () => {
  const of = (camera: string | null, mirrored: boolean | null = null) => turnedOver({ mirrored, cameras }, camera);
  expect(of('Front')).toEqual({ mirrored: true, mirroredLikely: false });
  expect(of('Back')).toEqual({});
  expect(of(null)).toEqual({ mirrored: false, mirroredLikely: true });
  expect(of(null, true)).toEqual({ mirrored: true, mirroredLikely: false });
  expect(turnedOver({ mirrored: null, cameras: [] }, null)).toEqual({});
});
