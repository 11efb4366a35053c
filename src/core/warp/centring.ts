import { lengthInWords } from '../model/lengthWords.ts';
import type { Loom, Piece, Warp } from '../model/piece.ts';
import { type ClothMm, type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';

/** How far the middle of the used notches lies right of the loom's middle, mm; left of it is below 0. */
export function offCentre(loom: Loom, warp: Warp): Mm {
  return mm((warp.firstNotch + (warp.ends - 1) / 2 - (loom.notches - 1) / 2) * loom.notchPitch);
}

/** The notch to start in so that the piece is centred, or half a notch left of it where the counts don't allow more. */
export function centredFirstNotch(loom: Loom, ends: number): number {
  return Math.max(0, Math.floor((loom.notches - ends) / 2));
}

/** Whether the piece sits in the middle of the loom, and where to start if not. Notches count from 1 in words. */
export function centringVerdict(piece: Piece): Verdict<'centred' | 'half-a-notch-off' | 'off-centre'> {
  const { loom, warp, units } = piece;
  const off = offCentre(loom, warp);
  const best = centredFirstNotch(loom, warp.ends);
  const between = `notches ${warp.firstNotch + 1} to ${warp.firstNotch + warp.ends} of ${loom.notches}`;
  if (Math.abs(off) < 1e-9) {
    return { verdict: 'centred', sentence: 'The piece sits in the middle of the loom.', why: between, remedy: null };
  }
  const side = off < 0 ? 'left' : 'right';
  const distance = lengthInWords(Math.abs(off), units, 'edge');
  const why = `It uses ${between}.`;
  if (Math.abs(off) <= loom.notchPitch / 2 + 1e-9) {
    const sentence = `The piece sits ${distance} to the ${side} of the middle, half a notch.`;
    const remedy = 'One end more or less would centre it; this little is seldom seen.';
    return { verdict: 'half-a-notch-off', sentence, why, remedy };
  }
  const sentence = `The piece sits ${distance} to the ${side} of the middle.`;
  return { verdict: 'off-centre', sentence, why, remedy: `Start in notch ${best + 1} to centre it.` };
}

/**
 * What a point drawn on an upright line becomes: a point needs an end to stand on. With an odd number of ends the
 * middle is an end; with an even number it is a gap, and the point is two ends wide.
 * @param axis x of the point, cloth mm; 0 for a centred one.
 */
export function pointVerdict(piece: Piece, axis: ClothMm): Verdict<'single-point' | 'blunt-point' | 'uneven-point'> {
  const { warp, loom } = piece;
  const place = axis / loom.notchPitch + (warp.ends - 1) / 2;
  const centred = Math.abs(axis) < 1e-9;
  const count = `${warp.ends} is ${warp.ends % 2 === 0 ? 'even' : 'odd'}`;
  const nearest = Math.round(place);
  if (Math.abs(place - nearest) < 0.05) {
    const sentence = `A ${centred ? 'centred ' : ''}point comes to a single end, end ${nearest + 1}.`;
    return { verdict: 'single-point', sentence, why: `${count}, so there is an end on the line.`, remedy: null };
  }
  const left = Math.floor(place);
  if (Math.abs(place - left - 0.5) < 0.05) {
    return {
      verdict: 'blunt-point',
      sentence: `A ${centred ? 'centred ' : ''}point is blunt, two ends wide: ends ${left + 1} and ${left + 2}.`,
      why: `${count}, so the line falls between two ends.`,
      remedy: centred
        ? `${warp.ends - 1} or ${warp.ends + 1} ends would give a single one.`
        : 'Move it half an end to either side for a single one.',
    };
  }
  return {
    verdict: 'uneven-point',
    sentence: `A point here leans on end ${nearest + 1} and its two sides step unequally.`,
    why: 'The line is neither on an end nor midway between two.',
    remedy: 'Move it onto an end, or midway between two.',
  };
}
