import { passesStanding, type StandingPasses } from '../compare/schedulePlace.ts';
import type { LoomReading } from '../model/check.ts';
import type { Block } from '../model/plan.ts';
import { median } from '../photo/statistics.ts';
import type { WorkTurn } from './workTurns.ts';

/** How far a check shows the work to have got, in turns done of the order of work. */
export interface TurnShown {
  readonly kind: 'moment';
  readonly turns: number;
  /** One sigma, in turns, rounded up: at least one, since an end is read to about a pass. */
  readonly sigmaTurns: number;
  /** The fewest turns that still go with what was seen, at two sigmas. */
  readonly least: number;
}

/** Cloth stands there, and at no moment of the order does it stand like that. */
export interface WovenOtherwise {
  readonly kind: 'other-order';
}

/** Passes an end may stand off the order on the mean: beyond that the cloth was woven in another order. */
const MOST_OFF = 4;

/**
 * The moment of the work whose fell lies nearest to that of a photograph, over all ends that were read: the least sum of
 * plain differences, so that a few ends read wrongly don't decide. Null where passes or fell weren't read or nothing is
 * woven.
 */
export function turnShown(
  reading: LoomReading,
  turns: readonly WorkTurn[],
  blocks: readonly Block[],
  ends: number,
): TurnShown | WovenOtherwise | null {
  const standing = passesStanding(reading).filter(({ end }) => end < ends);
  if (standing.length < ends / 2) return null;
  const sigma = median(standing.map((one) => one.sigma));
  const share = reading.pass === null ? 0 : reading.pass.sigma / reading.pass.value;
  const at = (sigmas: number) =>
    nearestMoment(
      standing.map(({ end, passes }) => ({ end, passes: passes * (1 + sigmas * share) + sigmas * sigma })),
      turns,
      blocks,
      ends,
    );
  const shown = at(0);
  if (shown.off > MOST_OFF) return { kind: 'other-order' };
  if (shown.turns === 0) return null;
  const least = at(-2).turns;
  return { kind: 'moment', turns: shown.turns, sigmaTurns: Math.max(1, Math.ceil((shown.turns - least) / 2)), least };
}

/** @returns turns done then, and how many passes an end is off on the mean. */
function nearestMoment(
  standing: readonly Pick<StandingPasses, 'end' | 'passes'>[],
  turns: readonly WorkTurn[],
  blocks: readonly Block[],
  ends: number,
): { readonly turns: number; readonly off: number } {
  const seen = new Map(standing.map(({ end, passes }) => [end, passes]));
  const fell = new Uint16Array(ends);
  let sum = standing.reduce((all, { passes }) => all + Math.abs(passes), 0);
  let best = { turns: 0, sum };
  turns.forEach((turn, index) => {
    for (let pass = 0; pass < turn.passes; pass++) {
      const row = blocks[turn.block]!.rows[turn.row + pass]!;
      for (let end = Math.min(row.from, row.to); end <= Math.max(row.from, row.to); end++) {
        const passes = seen.get(end);
        if (passes !== undefined) sum += Math.abs(passes - (row.pass + 1)) - Math.abs(passes - fell[end]!);
        fell[end] = row.pass + 1;
      }
    }
    if (sum < best.sum) best = { turns: index + 1, sum };
  });
  return { turns: best.turns, off: best.sum / Math.max(1, standing.length) };
}
