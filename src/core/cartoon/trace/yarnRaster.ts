import { ciede2000 } from '../../colour/ciede2000.ts';
import { type Lab, labFromSrgb } from '../../colour/lab.ts';
import { labOfYarns } from '../../colour/nearestYarn.ts';

/** A picture to trace: 8-bit sRGB, row-major from the top left, three bytes a pixel. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** The picture in yarns: an index into the yarns given for every pixel, from the top left. */
export interface YarnRaster {
  readonly width: number;
  readonly height: number;
  readonly yarns: Uint8Array;
}

/** Colours are judged in steps of 4 of 255 a channel: far finer than any two yarns differ, and quick to remember. */
const STEP = 4;

/**
 * Every pixel taken for the yarn that looks nearest (CIEDE2000).
 * @param colours the yarns to use, at most 255.
 */
export function inYarns(picture: Picture, colours: readonly { readonly colour: string }[]): YarnRaster {
  const labs: readonly Lab[] = labOfYarns(colours);
  const known = new Map<number, number>();
  const count = picture.width * picture.height;
  const yarns = new Uint8Array(count);
  const middle = (value: number) => (Math.floor(value / STEP) * STEP + STEP / 2) / 255;
  for (let pixel = 0; pixel < count; pixel++) {
    const [r, g, b] = [picture.rgb[3 * pixel]!, picture.rgb[3 * pixel + 1]!, picture.rgb[3 * pixel + 2]!];
    const key = (Math.floor(r / STEP) << 16) | (Math.floor(g / STEP) << 8) | Math.floor(b / STEP);
    let yarn = known.get(key);
    if (yarn === undefined) {
      const wanted = labFromSrgb({ red: middle(r), green: middle(g), blue: middle(b) });
      let best = Number.POSITIVE_INFINITY;
      yarn = 0;
      for (let one = 0; one < labs.length; one++) {
        const difference = ciede2000(wanted, labs[one]!);
        if (difference < best) [best, yarn] = [difference, one];
      }
      known.set(key, yarn);
    }
    yarns[pixel] = yarn;
  }
  return { width: picture.width, height: picture.height, yarns };
}
