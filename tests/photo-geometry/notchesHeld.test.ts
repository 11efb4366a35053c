import { describe, expect, it } from 'vitest';
import { type Camera, cameraToVector } from '../../src/core/photo/camera.ts';
import { notchX } from '../../src/core/photo/coarseCamera.ts';
import { OVER_NOTCH } from '../../src/core/photo/coveredNotches.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import type { View } from '../../src/core/photo/locateOptions.ts';
import { toLoom } from '../../src/core/photo/loomPose.ts';
import { followSettings } from '../../src/core/photo/measureStrings.ts';
import { type NotchesHeld, notchesHeld } from '../../src/core/photo/notchesHeld.ts';
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

interface Drawn {
  readonly places: readonly number[];
  /** Brightness a mm by which strings near the bottom bar pale to the right. */
  readonly lit?: number;
  /** The brightness of what lies over a place of the loom, mm. */
  readonly over?: (x: number, y: number) => number | null;
}

const placeX = (place: number): number => notchX(expected, expected.firstNotch + place);

/** Strings at places of the plan on a dark table. */
function held({ places, lit = 0, over = () => null }: Drawn): NotchesHeld {
  const scale = scaleOf(camera, { ...size, rgb: new Uint8Array(0) }, false, expected);
  const pose = poseOf(cameraToVector(camera), size, false);
  const at = places.map(placeX);
  const rgb = new Uint8Array(size.width * size.height * 3);
  for (let y = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++) {
      const loom = toLoom(pose, x, y);
      const aside = Math.min(...at.map((place) => Math.abs(loom.x - place)));
      const string = Math.max(0, Math.min(1, 0.5 + scale * (expected.stringDiameter / 2 - aside)));
      const light = loom.y < expected.base ? 150 + lit * Math.max(0, loom.x - 40) : 150;
      const seen = over(loom.x, loom.y) ?? 60 + string * (light - 60);
      rgb.fill(seen, (y * size.width + x) * 3, (y * size.width + x) * 3 + 3);
    }
  }
  const photo = { ...size, rgb };
  const view = { photo, expected, mirrored: false } as unknown as View;
  const settings = followSettings(expected, scale);
  return notchesHeld({ photo, camera, settings, slopes: () => 0, beyond: 4 }, view, null);
}

const present = ({ places }: NotchesHeld): number[] => places.filter((one) => one.present).map(({ place }) => place);
const all = Array.from({ length: expected.ends }, (_, place) => place);
const nextDoor = all.map((place) => place + 1);
const atTop = (y: number): boolean => y > expected.openingHeight - 35;

describe('the notches that hold a string', () => {
  it('are the plan’s where they are strung as planned', () => {
    expect(present(held({ places: all }))).toEqual(all);
  });

  it('may lie one beside the plan', () => {
    expect(present(held({ places: nextDoor }))).toEqual(nextDoor);
  });

  it('aren’t taken back for a string outside the plan that is a little paler at the other bar', () => {
    expect(present(held({ places: nextDoor, lit: 0.27 }))).toEqual(nextDoor);
  });

  it('are told at the bottom bar for those over which a ruler lies at the top one, and are then not empty', () => {
    const ruler = (x: number, y: number) => (atTop(y) && x > placeX(6.5) && x < placeX(9.5) ? 220 : null);
    const { places, below, atBottom } = held({ places: all, over: ruler });
    expect(places.filter(({ why }) => why === OVER_NOTCH).map(({ place }) => place)).toEqual([7, 8, 9]);
    expect([7, 8, 9].every((place) => below.has(place))).toBe(true);
    expect(atBottom).toBe(false);
  });

  it('are told at the bottom bar where a stick is put through all strings at the top one', () => {
    const stick = (_: number, y: number) => (atTop(y) ? 220 : null);
    const seen = held({ places: all, over: stick });
    expect(seen.atBottom).toBe(true);
    expect(present(seen)).toEqual(all);
  });
});
