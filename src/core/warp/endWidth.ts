import type { Loom, Warp } from '../model/piece.ts';
import { MM_PER_INCH, type Mm, mm } from '../model/units.ts';

/** How wide one end is: its strings lie side by side in the notch. */
export const endWidth = (warp: Warp): Mm => mm(warp.stringsPerEnd * warp.stringDiameter);

/** The bare room between one end and the next, where the weft goes down. Can be 0 or less when strings touch. */
export const endGap = (loom: Loom, warp: Warp): Mm => mm(loom.notchPitch - endWidth(warp));

/** Planned width of the cloth: ends × pitch, in every sum. */
export const clothWidth = (loom: Loom, warp: Warp): Mm => mm(warp.ends * loom.notchPitch);

export interface Sett {
  readonly endsPerInch: number;
  /** As low counts are given in ISO 7211-2. */
  readonly endsPer10cm: number;
  /** A doubled warp is reported as ends and as strings. */
  readonly stringsPer10cm: number;
}

export function settOf(loom: Loom, warp: Warp): Sett {
  const endsPer10cm = 100 / loom.notchPitch;
  return {
    endsPerInch: MM_PER_INCH / loom.notchPitch,
    endsPer10cm,
    stringsPer10cm: endsPer10cm * warp.stringsPerEnd,
  };
}

/** Ends that come nearest to a wished width. */
export const endsForWidth = (width: Mm, pitch: Mm): number => Math.max(2, Math.round(width / pitch));
