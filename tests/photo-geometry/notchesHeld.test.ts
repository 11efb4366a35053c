import { describe, expect, it } from 'vitest';
import { type Camera, cameraToVector } from '../../src/core/photo/camera.ts';
import { notchX } from '../../src/core/photo/coarseCamera.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import type { View } from '../../src/core/photo/locateOptions.ts';
import { toLoom } from '../../src/core/photo/loomPose.ts';
import { followSettings } from '../../src/core/photo/measureStrings.ts';
import { notchesHeld } from '../../src/core/photo/notchesHeld.ts';
import { poseOf } from '../../src/core/photo/poseFit.ts';
import { scaleOf } from '../../src/core/photo/refinePose.ts';

const expected: Expected = {
  pitch: 8,
  notches: 30,
  openingWidth: 256,
  openingHeight: 160,
  bar: 20,
  rail: 20,
  depth: 14,
  ends: 20,
  firstNotch: 5,
  stringDiameter: 2.4,
  stringsPerEnd: 1,
  base: 40,
};
const size = { width: 900, height: 700 };
const camera: Camera = {
  turn: [0, 0, 0],
  aimX: 0,
  aimY: 80,
  logDistance: Math.log(700),
  logFocal: Math.log(2000),
  k1: 0,
  k2: 0,
};

/** Strings at `places` of the plan on a dark table; near the bottom bar lit from the side, so that they pale to the right. */
function seenAt(places: readonly number[], lit: number): number[] {
  const scale = scaleOf(camera, { ...size, rgb: new Uint8Array(0) }, false, expected);
  const pose = poseOf(cameraToVector(camera), size, false);
  const at = places.map((place) => notchX(expected, expected.firstNotch + place));
  const rgb = new Uint8Array(size.width * size.height * 3);
  for (let y = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++) {
      const loom = toLoom(pose, x, y);
      const aside = Math.min(...at.map((place) => Math.abs(loom.x - place)));
      const string = Math.max(0, Math.min(1, 0.5 + scale * (expected.stringDiameter / 2 - aside)));
      const light = loom.y < expected.base ? 150 + lit * Math.max(0, loom.x - 40) : 150;
      rgb.fill(60 + string * (light - 60), (y * size.width + x) * 3, (y * size.width + x) * 3 + 3);
    }
  }
  const photo = { ...size, rgb };
  const view = { photo, expected, mirrored: false } as unknown as View;
  const settings = followSettings(expected, scale);
  const look = { photo, camera, settings, slopes: () => 0, beyond: 4 };
  return notchesHeld(look, view, null)
    .places.filter(({ present }) => present)
    .map(({ place }) => place);
}

const all = Array.from({ length: expected.ends }, (_, place) => place);
const nextDoor = all.map((place) => place + 1);

describe('the notches that hold a string', () => {
  it('are the plan’s where they are strung as planned', () => {
    expect(seenAt(all, 0)).toEqual(all);
  });

  it('may lie one beside the plan', () => {
    expect(seenAt(nextDoor, 0)).toEqual(nextDoor);
  });

  it('aren’t taken back for a string outside the plan that is a little paler at the other bar', () => {
    expect(seenAt(nextDoor, 0.27)).toEqual(nextDoor);
  });
});
