import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece, Yarn } from '../model/piece.ts';
import type { Mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { weftDiameter, type YarnDiameter } from '../yarn/yarnDiameter.ts';
import { endGap, endWidth } from './endWidth.ts';
import { lyingThickness, passHeightVerdict } from './passHeight.ts';
import { settSuggestion } from './settSuggestion.ts';

/**
 * The gap between ends, in weft thicknesses. The rule of thumb is 1: the weft is as thick as the space between the
 * warps (K. Todd-Hooker, American Tapestry Alliance). A warp of 8 to the inch under a weft of 12 wraps leaves about
 * 0.75 (wetlandwool.com) and still packs. A published striped rug has 3.0 (rigid-heddle book, 4 ends to the inch,
 * 260 yd/lb weft); worsted-weight weft on 12/6 at 6 to the inch is 3.5 and called too loose (R. Mezoff, 2018-03-28).
 * The bounds lie between these; 2.5 is our own judgement.
 */
export const gapInWefts = { crowds: 0.7, close: 1, open: 2.5, loose: 3.2 } as const;

/**
 * Twice the pass height, in weft thicknesses: the floats over one end follow each other two passes apart, and cover
 * it while a float spreads over that distance. A soft weft flattens to about 1.4 times its thickness (a value from
 * memory; the striped rug above stands at 0.86 and is weft-faced).
 */
export const floatsInWefts = { covers: 1.4, shows: 1.7 } as const;

export type RoomTag = 'crowds' | 'close' | 'suits' | 'open' | 'loose' | 'unknown';
export type CoverTag = 'covers' | 'may-show' | 'shows' | 'unknown';

export interface YarnOnSett {
  readonly yarn: string;
  /** Bare room between two ends, mm. */
  readonly gap: Mm;
  readonly weft: YarnDiameter | null;
  /** Will the weft go down between the ends, and hold them? */
  readonly room: Verdict<RoomTag>;
  /** Will it hide the strings? */
  readonly cover: Verdict<CoverTag>;
  readonly pass: ReturnType<typeof passHeightVerdict>;
}

/** Whether one yarn suits the piece's ends: room between them, cover over them, and the pass height planned. */
export function yarnOnSett(piece: Piece, yarn: Yarn): YarnOnSett {
  const gap = endGap(piece.loom, piece.warp);
  const weft = weftDiameter(yarn);
  return {
    yarn: yarn.id,
    gap,
    weft,
    room: roomVerdict(piece, yarn, gap, weft),
    cover: coverVerdict(piece, yarn, weft),
    pass: passHeightVerdict(piece, yarn),
  };
}

function figures(piece: Piece, yarn: Yarn, gap: Mm, weft: YarnDiameter): string {
  const words = (length: number) => lengthInWords(length, piece.units, 'edge');
  return `The gap is ${words(Math.max(0, gap))} and ${yarn.name} ${words(weft.diameter)}${weft.guess ? ', a guess' : ''}.`;
}

const unknown = (yarn: Yarn, units: Piece['units']): Verdict<'unknown'> => ({
  verdict: 'unknown',
  sentence: `Nothing says how thick ${yarn.name} is.`,
  why: 'Neither a diameter, nor wraps, nor a label or count is given.',
  remedy:
    units === 'mm'
      ? 'Wrap it round a ruler and count the wraps in a centimetre, or type what its label says.'
      : 'Wrap it round a ruler and count the wraps in an inch, or type what its label says.',
});

function roomVerdict(piece: Piece, yarn: Yarn, gap: Mm, weft: YarnDiameter | null): Verdict<RoomTag> {
  if (weft === null) return unknown(yarn, piece.units);
  const ratio = gap / weft.diameter;
  const why = figures(piece, yarn, gap, weft);
  const suggestion = settSuggestion(piece, yarn);
  if (ratio < gapInWefts.crowds) {
    const sentence = `${yarn.name} is too thick to go down between the ends: the rows will crowd and the strings show.`;
    return { verdict: 'crowds', sentence, why, remedy: suggestion.thinner };
  }
  if (ratio < gapInWefts.close) {
    const sentence = `${yarn.name} goes down between the ends with a firm beat.`;
    return { verdict: 'close', sentence, why, remedy: null };
  }
  if (ratio <= gapInWefts.open) {
    const sentence = `${yarn.name} has room between the ends, so the rows won’t crowd.`;
    return { verdict: 'suits', sentence, why, remedy: null };
  }
  if (ratio <= gapInWefts.loose) {
    const sentence = `${yarn.name} is thin for these ends: the cloth will be supple.`;
    return { verdict: 'open', sentence, why, remedy: suggestion.thicker };
  }
  const sentence = `${yarn.name} is too thin for these ends: the cloth will be loose and the ends will wander.`;
  return { verdict: 'loose', sentence, why, remedy: suggestion.thicker };
}

function coverVerdict(piece: Piece, yarn: Yarn, weft: YarnDiameter | null): Verdict<CoverTag> {
  if (weft === null) return unknown(yarn, piece.units);
  const { cloth, units } = piece;
  const thickness = lyingThickness(yarn, weft);
  const ratio = (2 * cloth.passHeight) / thickness;
  const pass = lengthInWords(cloth.passHeight, units, 'pass-height');
  const why = `Two passes are ${lengthInWords(2 * cloth.passHeight, units, 'pass-height')} and ${yarn.name} is ${lengthInWords(thickness, units, 'edge')} thick in the cloth${weft.guess ? ', a guess' : ''}.`;
  const remedy = `Beat closer than ${pass}, wind more strands together, or take a thicker weft.`;
  if (ratio <= floatsInWefts.covers) {
    return { verdict: 'covers', sentence: `${yarn.name} will cover the warp.`, why, remedy: null };
  }
  if (ratio <= floatsInWefts.shows) {
    return { verdict: 'may-show', sentence: `The strings may show a little through ${yarn.name}.`, why, remedy };
  }
  return { verdict: 'shows', sentence: `The strings will show through ${yarn.name}.`, why, remedy };
}

export type SettTag = 'suits' | 'watch' | 'mend' | 'unknown';

export interface SettCheck {
  readonly endWidth: Mm;
  readonly gap: Mm;
  /** One for every yarn woven as weft. */
  readonly yarns: readonly YarnOnSett[];
  /** The worst of them, as the sentence at the head of the piece. */
  readonly headline: Verdict<SettTag>;
}

/** The whole piece's sett: every yarn that is woven, and the one sentence about them. */
export function settCheck(piece: Piece): SettCheck {
  const used = new Set([piece.cloth.ground, piece.cloth.headerYarn, ...piece.shapes.map((shape) => shape.yarn)]);
  const yarns = piece.yarns.filter((yarn) => used.has(yarn.id)).map((yarn) => yarnOnSett(piece, yarn));
  return {
    endWidth: endWidth(piece.warp),
    gap: endGap(piece.loom, piece.warp),
    yarns,
    headline: headline(piece, yarns),
  };
}

const severity: Readonly<Record<RoomTag | CoverTag, number>> = {
  shows: 3,
  crowds: 3,
  loose: 3,
  unknown: 2,
  'may-show': 1,
  open: 1,
  close: 0,
  suits: 0,
  covers: 0,
};

function headline(piece: Piece, yarns: readonly YarnOnSett[]): Verdict<SettTag> {
  const found = yarns.flatMap((yarn) => [yarn.room, yarn.cover]);
  const worst = found.reduce<Verdict<RoomTag | CoverTag> | null>(
    (known, next) => (known === null || severity[next.verdict] > severity[known.verdict] ? next : known),
    null,
  );
  if (worst === null || severity[worst.verdict] === 0) {
    const thickest = yarns.reduce((known, next) => Math.max(known, next.weft?.diameter ?? 0), 0);
    const words = (length: number) => lengthInWords(length, piece.units, 'edge');
    const gap = endGap(piece.loom, piece.warp);
    return {
      verdict: 'suits',
      sentence: 'The weft will cover the warp.',
      why: `The gap is ${words(gap)} and the weft ${words(thickest)}, so the strings won’t show and the rows won’t crowd.`,
      remedy: null,
    };
  }
  const tag = worst.verdict === 'unknown' ? 'unknown' : severity[worst.verdict] === 3 ? 'mend' : 'watch';
  return { ...worst, verdict: tag };
}
