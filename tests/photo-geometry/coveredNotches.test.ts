import { describe, expect, it } from 'vitest';
import type { PlaceSeen } from '../../src/core/photo/countEnds.ts';
import { coveredNotches, OVER_NOTCH } from '../../src/core/photo/coveredNotches.ts';
import type { Photo } from '../../src/core/photo/raster.ts';

const PITCH = 10;
const PLACES = 20;

/** Strings at whole multiples of the pitch on a chequered table; `over` paints what lies over them. */
function picture(strings: readonly number[], over: (x: number) => number | null): Photo {
  const width = PITCH * (PLACES + 2);
  const height = 60;
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const table = ((x >> 3) + (y >> 3)) % 2 === 0 ? 90 : 130;
      const string = strings.some((at) => Math.abs(x - PITCH * (at + 1)) <= 1) ? 240 : null;
      rgb.fill(over(x) ?? string ?? table, (y * width + x) * 3, (y * width + x) * 3 + 3);
    }
  }
  return { width, height, rgb };
}

const all = Array.from({ length: PLACES }, (_, place) => place);
const told = (photo: Photo, lacking: readonly number[]): number[] =>
  coveredNotches(
    photo,
    all.map((place): PlaceSeen => {
      const present = !lacking.includes(place);
      return { place, present, why: present ? null : 'no string is seen at its notch' };
    }),
    (place, depth) => ({ x: PITCH * (place + 1), y: 2 * depth }),
  )
    .filter(({ why }) => why === OVER_NOTCH)
    .map(({ place }) => place);
const from = (first: number, last: number, value: number) => (x: number) =>
  x > PITCH * (first + 0.5) && x < PITCH * (last + 1.5) ? value : null;

describe('notches that lie under something', () => {
  it('are told by a colour that no gap has', () => {
    expect(told(picture(all, from(7, 9, 200)), [7, 8, 9])).toEqual([7, 8, 9]);
  });

  it('aren’t empty ones, which show the table as the gaps do', () => {
    const strings = all.filter((place) => place < 7 || place > 9);
    expect(
      told(
        picture(strings, () => null),
        [7, 8, 9],
      ),
    ).toEqual([]);
  });

  it('are those at its edge too, where no string is seen', () => {
    expect(told(picture(all, from(7, 9, 200)), [6, 7, 8, 9])).toEqual([6, 7, 8, 9]);
  });

  it('aren’t a single empty one in which the table happens to differ', () => {
    expect(told(picture(all, from(7, 7, 200)), [7])).toEqual([]);
  });
});
