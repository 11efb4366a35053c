import { ciede2000 } from './ciede2000.ts';
import { type Lab, labFromSrgb } from './lab.ts';
import { type Srgb, srgbFromHex } from './srgb.ts';

export interface YarnMatch {
  /** Index into the yarns given. */
  readonly yarn: number;
  /** CIEDE2000 from the colour asked for to the yarn's. */
  readonly difference: number;
}

/** Each yarn's colour as L*a*b*, in the order given; a yarn whose colour can't be read is taken as mid grey. */
export const labOfYarns = (yarns: readonly { readonly colour: string }[]): Lab[] =>
  yarns.map((yarn) => labFromSrgb(srgbFromHex(yarn.colour) ?? { red: 0.5, green: 0.5, blue: 0.5 }));

/**
 * The yarn that looks most like a colour.
 * @param yarns at least one; the first wins a tie.
 */
export function nearestYarn(colour: Srgb, yarns: readonly Lab[]): YarnMatch {
  const wanted = labFromSrgb(colour);
  let best: YarnMatch = { yarn: 0, difference: Number.POSITIVE_INFINITY };
  for (let yarn = 0; yarn < yarns.length; yarn++) {
    const difference = ciede2000(wanted, yarns[yarn]!);
    if (difference < best.difference) best = { yarn, difference };
  }
  return best;
}
