import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece, Yarn } from '../model/piece.ts';
import { MM_PER_INCH, type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { weftDiameter, type YarnDiameter } from '../yarn/yarnDiameter.ts';

/** Neighbouring passes nest: each lies in the hollow between the floats of the one below. */
const nesting = 0.5;
/** One sigma of a pass height foretold from thickness alone, as a share: beats and yarns differ. Our own judgement. */
const beatSpread = 0.25;

/**
 * How much thicker a soft yarn lies in cloth than it packs. Medium wool, 800 to 1,000 yd/lb, packs to about 1.0 mm
 * (Ashenhurst) but wraps at 2.1 to 2.8 mm (Craft Yarn Council); woven it lies between. 1.5 is our own judgement: the
 * published rug of 260 yd/lb wool at 21 passes to the inch then stands at 0.86 of half its thickness, and single
 * medium wool at the common 20 to 36 passes between 0.9 and 1.7.
 */
const loftOfSoftWool = 1.5;

/** The weft's thickness as it lies in cloth, mm. A diameter that was measured or wrapped is lofty already. */
export function lyingThickness(yarn: Yarn, weft: YarnDiameter): Mm {
  const packed = weft.from === 'label' || weft.from === 'count';
  return mm(packed && yarn.fibre === 'wool' ? weft.diameter * loftOfSoftWool : weft.diameter);
}

export interface ExpectedPass {
  readonly passHeight: Mm;
  /** One sigma, mm. */
  readonly sigma: Mm;
  readonly from: 'weft-diameter' | 'measured';
  readonly working: string;
}

/**
 * The pass height to expect of a yarn: half its compressed diameter, until a pass height has been measured on this
 * piece, which then holds.
 * @returns null when neither is known.
 */
export function expectedPass(piece: Piece, yarn: Yarn): ExpectedPass | null {
  const { cloth, units } = piece;
  if (cloth.passHeightSource === 'measured') {
    const working = `${lengthInWords(cloth.passHeight, units, 'pass-height')} as measured on the cloth`;
    return { passHeight: cloth.passHeight, sigma: mm(cloth.passHeight * 0.05), from: 'measured', working };
  }
  const weft = weftDiameter(yarn);
  if (weft === null) return null;
  const thickness = lyingThickness(yarn, weft);
  const passHeight = mm(thickness * nesting);
  const working = `half of ${lengthInWords(thickness, units, 'pass-height')}, because neighbouring passes nest`;
  return { passHeight, sigma: mm(passHeight * beatSpread), from: 'weft-diameter', working };
}

/** Whether the planned pass height is one this yarn is likely to beat down to. */
export function passHeightVerdict(
  piece: Piece,
  yarn: Yarn,
): Verdict<'likely' | 'closer-than-likely' | 'taller-than-likely' | 'unknown'> {
  const { cloth, units } = piece;
  const words = (length: number) => lengthInWords(length, units, 'pass-height');
  const expected = expectedPass(piece, yarn);
  if (expected === null) {
    return {
      verdict: 'unknown',
      sentence: `Nothing says how thick ${yarn.name} is, so its pass height can't be foretold.`,
      why: `${words(cloth.passHeight)} is planned.`,
      remedy: 'Wrap it round a ruler and count the wraps, or measure 20 passes once they are woven.',
    };
  }
  const difference = cloth.passHeight - expected.passHeight;
  const [low, high] = [expected.passHeight - 2 * expected.sigma, expected.passHeight + 2 * expected.sigma];
  const why = `A pass of ${yarn.name} is likely to be ${words(low)} to ${words(high)}: ${expected.working}.`;
  if (Math.abs(difference) <= 2 * expected.sigma) {
    return {
      verdict: 'likely',
      sentence: `A pass of ${words(cloth.passHeight)} suits ${yarn.name}.`,
      why,
      remedy: null,
    };
  }
  const closer = difference < 0;
  return {
    verdict: closer ? 'closer-than-likely' : 'taller-than-likely',
    sentence: `A pass of ${words(cloth.passHeight)} is ${closer ? 'closer' : 'taller'} than ${yarn.name} is likely to beat.`,
    why,
    remedy: 'Weave 20 passes, measure them and use that height.',
  };
}

/**
 * Pass height from counting on the cloth: along one rib every second pass shows as a bead, so the beads on a rib are
 * half the passes (R. Mezoff, 2021-05-13).
 * @param beads counted up one rib over `length` mm.
 */
export function passHeightFromBeads(beads: number, length: Mm): Mm {
  return mm(length / (2 * beads));
}

/** Passes to the inch. */
export const passesPerInch = (passHeight: Mm): number => MM_PER_INCH / passHeight;
