import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { clothWidth } from './endWidth.ts';

/** The last part of the warp is hard to open a shed in: 25 mm at the least, 75 with ease. Common practice, no source. */
const hardToWeave = mm(75);
const unweavable = mm(25);

export interface LoomFit {
  readonly width: Verdict<'fits' | 'too-wide'>;
  readonly height: Verdict<'fits' | 'tight' | 'too-tall'>;
  readonly widestEnds: number;
  readonly widest: Mm;
  readonly tallest: Mm;
}

/** Whether the piece fits on its loom, and the largest that would. */
export function loomFit(piece: Piece): LoomFit {
  const { loom, warp, cloth, units } = piece;
  const widestEnds = Math.min(loom.notches, Math.floor(loom.openingWidth / loom.notchPitch + 1e-9));
  const widest = mm(widestEnds * loom.notchPitch);
  const tallest = mm(Math.max(0, loom.openingHeight - cloth.baseAboveBottomBar - hardToWeave));
  const words = (length: number) => lengthInWords(length, units);
  return { width: width(), height: height(), widestEnds, widest, tallest };

  function width(): LoomFit['width'] {
    const wide = clothWidth(loom, warp);
    const past = Math.max(wide - widest, (warp.firstNotch + warp.ends - loom.notches) * loom.notchPitch);
    if (past <= 1e-9) {
      const why = `${warp.ends} ends at ${lengthInWords(loom.notchPitch, units, 'pass-height')} are ${words(wide)}.`;
      return { verdict: 'fits', sentence: 'The width fits.', why, remedy: null };
    }
    const startsTooFarRight = warp.ends <= widestEnds;
    return {
      verdict: 'too-wide',
      sentence: startsTooFarRight
        ? `From notch ${warp.firstNotch + 1}, ${warp.ends} ends run ${words(past)} past the last notch.`
        : `${words(wide)} is wider than the loom by ${words(wide - widest)}.`,
      why: `The widest that fits is ${words(widest)}, ${widestEnds} ends.`,
      remedy: startsTooFarRight
        ? `Start in notch ${loom.notches - warp.ends + 1} or further left.`
        : `Use ${widestEnds} ends or fewer.`,
    };
  }

  function height(): LoomFit['height'] {
    const room = loom.openingHeight - cloth.baseAboveBottomBar - cloth.height;
    const why = `Above the cloth ${words(Math.max(0, room))} of warp stays bare.`;
    if (room >= hardToWeave) return { verdict: 'fits', sentence: 'The height fits.', why, remedy: null };
    if (room >= unweavable) {
      const sentence = `The top will be slow to weave: only ${words(room)} of warp is left to open a shed in.`;
      return { verdict: 'tight', sentence, why, remedy: `A height of ${words(tallest)} leaves room.` };
    }
    const sentence = `${words(cloth.height)} is too tall for this loom.`;
    return {
      verdict: 'too-tall',
      sentence,
      why: room < 0 ? `It runs ${words(-room)} past the top bar.` : why,
      remedy: `The tallest with ease is ${words(tallest)}.`,
    };
  }
}
