import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Expected } from '../../src/core/photo/expected.ts';
import { followString } from '../../src/core/photo/followString.ts';
import type { Photo } from '../../src/core/photo/raster.ts';
import { colourBehind, withoutShade } from '../../src/core/photo/withoutShade.ts';

type Colour = readonly [number, number, number];

const PX_PER_MM = 4;
const PITCH = 5;
const FIRST = 10;
const ENDS = 16;
const WIDTH = 120;
const HEIGHT = 70;
/** y from the bottom edge of the picture up. */
const toPhoto = (x: number, y: number) => ({ x: x * PX_PER_MM, y: (HEIGHT - y) * PX_PER_MM });
const settings = { pitch: PITCH, halfEnd: 0.7, blur: 0.3, step: 1.5, fine: 0.2 };

/** Strings 1.4 mm broad at every notch, each with a shadow on the table 5.6 % nearer together. */
function shadowedStrings(table: Colour, string: Colour, shade: number): Photo {
  const photo: Photo = {
    width: WIDTH * PX_PER_MM,
    height: HEIGHT * PX_PER_MM,
    rgb: new Uint8Array(3 * WIDTH * HEIGHT * PX_PER_MM ** 2),
  };
  const within = (x: number, from: number, pitch: number) => {
    const end = Math.round((x - from) / pitch);
    return end >= 0 && end < ENDS && Math.abs(x - from - end * pitch) < 0.7;
  };
  for (let column = 0; column < photo.width; column++) {
    const x = column / PX_PER_MM;
    const shaded = within(x, FIRST + 3.1, 0.944 * PITCH);
    const colour = within(x, FIRST, PITCH) ? string : table.map((value) => value * (shaded ? shade : 1));
    for (let row = 0; row < photo.height; row++) photo.rgb.set(colour, (row * photo.width + column) * 3);
  }
  return photo;
}

/** How far each end, followed down from its notch, lies off at the lower end, mm. */
const astray = (photo: Photo): number[] =>
  Array.from({ length: ENDS }, (_, end) => {
    const notch = FIRST + end * PITCH;
    const last = followString(photo, toPhoto, notch, HEIGHT - 2, 10, 0, settings).at(-1);
    return last ? Math.abs(last.x - notch) : Number.POSITIVE_INFINITY;
  });

const expected = {
  pitch: PITCH,
  notches: 2 * FIRST + ENDS,
  firstNotch: 0,
  ends: ENDS,
  openingHeight: HEIGHT,
} as Expected;
/** The plan's notches lie about the middle of the loom; the drawn ones begin at `FIRST`. */
const fromLoom = (x: number, y: number) => toPhoto(x + FIRST + ((expected.notches - 1) / 2) * PITCH, y);

describe('a picture without shade', () => {
  it('lets strings be followed where their shadows would have been', () => {
    const photo = shadowedStrings([127, 174, 208], [155, 148, 138], 0.45);
    const behind = colourBehind(photo, fromLoom, expected)!;
    expect(astray(photo).filter((off) => off > 0.3).length).toBeGreaterThan(2);
    expect(Math.max(...astray(withoutShade(photo, behind)))).toBeLessThan(0.15);
  });

  it('shows what lies behind alike in any light, and what has another hue apart from it', () => {
    const level = fc.integer({ min: 40, max: 250 });
    fc.assert(
      fc.property(level, level, level, fc.double({ min: 0.2, max: 1, noNaN: true }), (r, g, b, light) => {
        const other = [b, r, g] as const;
        const apart = Math.hypot(r - b, g - r, b - g);
        fc.pre(apart > 60);
        const shaded = [r, g, b].map((value) => Math.round(value * light));
        const photo: Photo = { width: 3, height: 1, rgb: Uint8Array.of(r, g, b, ...shaded, ...other) };
        const { rgb } = withoutShade(photo, [r, g, b]);
        const distance = (i: number, j: number) =>
          Math.hypot(...[0, 1, 2].map((c) => rgb[3 * i + c]! - rgb[3 * j + c]!));
        expect(distance(0, 1)).toBeLessThan(2);
        expect(distance(0, 2)).toBeGreaterThan(0.35 * apart);
      }),
    );
  });

  it('is not made where the gaps lie outside the picture', () => {
    expect(
      colourBehind(shadowedStrings([90, 90, 90], [200, 200, 200], 1), (x, y) => ({ x: -x - 1e4, y }), expected),
    ).toBeNull();
  });
});
