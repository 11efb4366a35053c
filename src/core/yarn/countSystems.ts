import type { CountSystem, YarnCount } from '../model/piece.ts';
import { type Tex, tex } from '../model/units.ts';

/** Exact by definition of the yard and the pound. */
export const METRES_PER_YARD = 0.9144;
export const GRAMS_PER_POUND = 453.59237;

/** tex × (yards per pound): 496 054.648… */
export const TEX_YARDS_PER_POUND = (GRAMS_PER_POUND / METRES_PER_YARD) * 1000;

/**
 * Yards in a pound of count 1, for the systems built on hanks to the pound. ASTM D2260-03(2013), Table 1: a cotton
 * hank is 840 yd, a worsted hank 560, a linen lea 300, a woollen run 1,600.
 */
const yardsPerPoundAtOne = {
  'cotton-ne': 840,
  'worsted-nw': 560,
  'linen-lea': 300,
  'woollen-run': 1600,
  'yards-per-pound': 1,
} as const satisfies Partial<Record<CountSystem, number>>;

const isHankSystem = (system: CountSystem): system is keyof typeof yardsPerPoundAtOne => system in yardsPerPoundAtOne;

/** Linear density of a single strand of this count. @param size as the system writes it, above 0. */
export function texFromSize(system: CountSystem, size: number): Tex {
  if (isHankSystem(system)) return tex(TEX_YARDS_PER_POUND / (size * yardsPerPoundAtOne[system]));
  switch (system) {
    case 'tex':
      return tex(size);
    case 'metric-nm':
      return tex(1_000 / size);
    case 'metres-per-100-g':
      return tex(100_000 / size);
  }
}

/** How a system writes this linear density. @param density g/km, above 0. */
export function sizeFromTex(system: CountSystem, density: Tex): number {
  if (isHankSystem(system)) return TEX_YARDS_PER_POUND / density / yardsPerPoundAtOne[system];
  switch (system) {
    case 'tex':
      return density;
    case 'metric-nm':
      return 1_000 / density;
    case 'metres-per-100-g':
      return 100_000 / density;
  }
}

/** One system's figure in another's. */
export function convertSize(size: number, from: CountSystem, to: CountSystem): number {
  return sizeFromTex(to, texFromSize(from, size));
}

/**
 * Linear density of the whole plied yarn by count arithmetic alone: 8/2 cotton is two strands of 8. Twisting shortens
 * a plied yarn, so a ball usually holds about 5 % less length than this says (8/4 cotton: 1,680 yd/lb by count, sold
 * as 1,600); a label overrides it.
 */
export function texFromCount(count: YarnCount): Tex {
  return tex(texFromSize(count.system, count.size) * count.plies);
}

/** The figure of one strand, when the whole plied yarn has this linear density. */
export function countFromTex(system: CountSystem, whole: Tex, plies: number): YarnCount {
  return { system, size: sizeFromTex(system, tex(whole / plies)), plies };
}

/** How a count is written: cotton and linen size/plies, worsted and metric plies/size. */
export function yarnCountInWords(count: YarnCount): string {
  const size = String(Number(count.size.toPrecision(5)));
  const plied = count.plies > 1;
  switch (count.system) {
    case 'tex':
      return plied ? `${count.plies} × ${size} tex` : `${size} tex`;
    case 'metric-nm':
      return plied ? `Nm ${count.plies}/${size}` : `Nm ${size}`;
    case 'cotton-ne':
      return plied ? `${size}/${count.plies} cotton` : `Ne ${size} cotton`;
    case 'worsted-nw':
      return plied ? `${count.plies}/${size} worsted` : `${size}s worsted`;
    case 'linen-lea':
      return plied ? `${size}/${count.plies} linen` : `${size} lea linen`;
    case 'woollen-run':
      return plied ? `${count.plies}-ply ${size} run` : `${size} run`;
    case 'yards-per-pound':
      return plied ? `${count.plies} × ${size} yd/lb` : `${size} yd/lb`;
    case 'metres-per-100-g':
      return plied ? `${count.plies} × ${size} m/100 g` : `${size} m/100 g`;
  }
}
