import { notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import { median } from './statistics.ts';

type Colour = readonly [number, number, number];

/** Heights below the top bar, mm, at which the gaps between strings are looked at: clear of the bar's own shadow. */
const DEPTHS = [8, 12, 16, 20, 24, 28, 32, 36];

/**
 * The colour of what lies behind the strings, in the middles of the gaps below the top bar.
 * @param toPhoto loom mm to photo px.
 * @returns null where too little of it is in the picture.
 */
export function colourBehind(
  photo: Photo,
  toPhoto: (x: number, y: number) => { readonly x: number; readonly y: number },
  expected: Expected,
): Colour | null {
  const gaps: Colour[] = [];
  for (let end = 0; end + 1 < expected.ends; end++) {
    for (const depth of DEPTHS) {
      const seen = toPhoto(notchX(expected, expected.firstNotch + end + 0.5), expected.openingHeight - depth);
      const [column, row] = [Math.round(seen.x), Math.round(seen.y)];
      if (column < 0 || row < 0 || column >= photo.width || row >= photo.height) continue;
      const at = (row * photo.width + column) * 3;
      gaps.push([photo.rgb[at]!, photo.rgb[at + 1]!, photo.rgb[at + 2]!]);
    }
  }
  if (gaps.length < 2 * DEPTHS.length) return null;
  const middle = (channel: number): number => median(gaps.map((colour) => colour[channel]!));
  return [middle(0), middle(1), middle(2)];
}

/** What is left of every colour lies about this level. */
const MIDDLE = 128;

/**
 * The picture without light and shade on what lies behind the strings: a shadow makes its three channels smaller in one
 * proportion, also after the usual curve of a camera, which is a power; so what is left of a colour when its part along
 * that proportion is taken away is the same in light and in shade. Strings of another hue stand out from it still.
 */
export function withoutShade(photo: Photo, behind: Colour): Photo {
  const length = Math.hypot(...behind);
  const [r, g, b] = behind.map((value) => value / length) as [number, number, number];
  const rgb = new Uint8Array(photo.rgb.length);
  const source = photo.rgb;
  for (let i = 0; i < rgb.length; i += 3) {
    const along = source[i]! * r + source[i + 1]! * g + source[i + 2]! * b;
    rgb[i] = clamped(MIDDLE + source[i]! - along * r);
    rgb[i + 1] = clamped(MIDDLE + source[i + 1]! - along * g);
    rgb[i + 2] = clamped(MIDDLE + source[i + 2]! - along * b);
  }
  return { width: photo.width, height: photo.height, rgb };
}

const clamped = (value: number): number => Math.max(0, Math.min(255, Math.round(value)));
