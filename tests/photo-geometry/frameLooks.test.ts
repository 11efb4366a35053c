import { describe, expect, it } from 'vitest';
import { usualCamera } from '../../src/core/photo/coarseCamera.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import { mapOf } from '../../src/core/photo/firstLook.ts';
import {
  FAIR_LOOK,
  frameLooks,
  framePicture,
  looksOfAnySize,
  looksOneSideOff,
} from '../../src/core/photo/frameLooks.ts';
import type { Photo } from '../../src/core/photo/raster.ts';
import { seenPitches } from '../../src/core/photo/seenPitches.ts';
import { stringBands } from '../../src/core/photo/stringBands.ts';
import { stringPitch } from '../../src/core/photo/stringPitch.ts';

const expected: Expected = {
  pitch: 8,
  notches: 36,
  openingWidth: 300,
  openingHeight: 380,
  bar: 24,
  rail: 24,
  depth: 18,
  ends: 26,
  firstNotch: 5,
  stringDiameter: 2,
  stringsPerEnd: 1,
  base: 50,
};
const SCALE = 1.9;

/** A flat frame with strings `pitch` apart, turned by `turn`, over a table striped `stripe` mm apart, or plain. */
function paintedFrame(turn: number, pitch: number, stripe: number | null): Photo {
  const [width, height] = [900, 1100];
  const rgb = new Uint8Array(width * height * 3);
  let state = 7;
  const grain = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 2 ** 32 - 0.5) * 8;
  };
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++) {
      const dx = (px - width / 2) / SCALE;
      const dy = (py - height / 2) / SCALE;
      const x = c * dx + s * dy;
      const y = -(-s * dx + c * dy);
      const beyondX = Math.abs(x) - expected.openingWidth / 2;
      const beyondY = Math.abs(y) - expected.openingHeight / 2;
      const beyond = Math.max(beyondX, beyondY);
      let colour = stripe !== null && Math.abs((x + 400) % stripe) < stripe / 2 ? [90, 110, 140] : [120, 135, 160];
      if (beyond > 0 && beyond < expected.bar) colour = [190, 150, 105];
      const place = x / pitch + 0.5;
      const string = Math.abs(place - Math.round(place)) * pitch < expected.stringDiameter / 2;
      if (beyondX < -45 && beyondY < 12 && string) colour = [240, 236, 225];
      for (let k = 0; k < 3; k++) rgb[(py * width + px) * 3 + k] = Math.max(0, Math.min(255, colour[k]! + grain()));
    }
  }
  return { width, height, rgb };
}

const framesIn = (photo: Photo) => framePicture(photo, usualCamera(photo), false);

/** mm by which the worst corner of the opening is misplaced, whichever way up. */
function worstCorner(photo: Photo, turn: number, plan: Expected): number {
  const [look] = frameLooks(framesIn(photo), plan, 1);
  if (!look) return Number.POSITIVE_INFINITY;
  const map = mapOf(look.camera, photo, false);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners = [-1, 1].flatMap((a) =>
    [-1, 1].map((b) => ({ x: (a * expected.openingWidth) / 2, y: (b * expected.openingHeight) / 2 })),
  );
  const truth = corners.map(({ x, y }) => ({
    x: photo.width / 2 + SCALE * (c * x + s * y),
    y: photo.height / 2 + SCALE * (s * x - c * y),
  }));
  const seen = corners.map(({ x, y }) => map(x, y + plan.openingHeight / 2));
  return Math.max(...truth.map((t) => Math.min(...seen.map((p) => Math.hypot(p.x - t.x, p.y - t.y))))) / SCALE;
}

describe('a look for the frame itself', () => {
  it.each([0, 0.06, -0.1, Math.PI / 2, Math.PI / 2 + 0.05])('finds a frame turned by %f', (turn) => {
    expect(worstCorner(paintedFrame(turn, 8, null), turn, expected)).toBeLessThan(2);
  });

  it('finds it on a table of broad stripes too', () => {
    expect(worstCorner(paintedFrame(0.05, 8, 90), 0.05, expected)).toBeLessThan(2);
  });

  it('does not take a frame of other proportions for it', () => {
    const other = { ...expected, openingWidth: 380, openingHeight: 300 };
    const [look] = frameLooks(framesIn(paintedFrame(0.05, 8, null)), { ...other, bar: 60 }, 1);
    expect(look?.edges ?? 0).toBeLessThan(5);
  });
});

describe('a look for a frame that the plan has in another size', () => {
  const photo = paintedFrame(0.05, 8, null);
  const seen = framesIn(photo);
  const off = (one: Expected): number =>
    Math.max(
      Math.abs(one.openingWidth / expected.openingWidth - 1),
      Math.abs(one.openingHeight / expected.openingHeight - 1),
    );

  it.each([
    [1, 0.85],
    [1.2, 1],
    [1.15, 1.15],
    [0.9, 1.2],
  ])('finds its true opening by its strings, with %f of the width and %f of the height planned', (wide, high) => {
    const plan = { ...expected, openingWidth: 300 * wide, openingHeight: 380 * high };
    const [look] = seenPitches(stringBands(photo, plan), seen.factor)
      .flatMap((scale) => looksOfAnySize(seen, plan, scale, 1))
      .sort((a, b) => b.score - a.score);
    expect(off(look!.expected)).toBeLessThan(0.02);
  });

  it.each([
    [1, 1.25],
    [0.9, 1],
  ])('finds it by the side that is as planned, with %f of the width and %f of the height planned', (wide, high) => {
    const plan = { ...expected, openingWidth: 300 * wide, openingHeight: 380 * high };
    const [look] = looksOneSideOff(seen, plan, seenPitches(stringBands(photo, plan), seen.factor), 1);
    expect(off(look!.expected)).toBeLessThan(0.02);
  });

  it('finds none where strings are seen but the frame is as planned', () => {
    const [scale] = seenPitches(stringBands(photo, expected), seen.factor);
    expect(looksOfAnySize(seen, expected, scale!, 1)[0]?.score ?? 0).toBeLessThan(FAIR_LOOK);
  });
});

describe('the pitch of the strings', () => {
  it.each([6, 7.2, 8, 9.4])('reads %f mm off the picture', (pitch) => {
    const photo = paintedFrame(0, pitch, null);
    const map = (x: number, y: number) => ({
      x: photo.width / 2 + SCALE * x,
      y: photo.height / 2 - SCALE * (y - expected.openingHeight / 2),
    });
    expect(Math.abs(stringPitch(photo, map, expected)! - pitch)).toBeLessThan(0.03);
  });

  it('says nothing where nothing repeats', () => {
    const photo = paintedFrame(0, 1e6, null);
    const map = (x: number, y: number) => ({
      x: photo.width / 2 + SCALE * x,
      y: photo.height / 2 - SCALE * (y - expected.openingHeight / 2),
    });
    expect(stringPitch(photo, map, expected)).toBeNull();
  });
});
