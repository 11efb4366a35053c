import type { SteppedChart } from '../chart/makeChart.ts';
import type { Piece } from '../model/piece.ts';
import type { Block, BlockRow, Overhang, TurnStep } from '../model/plan.ts';
import { type EdgeStep, edgeSteps } from '../schedule/edgeSteps.ts';
import { blockNames } from './blockNames.ts';
import { linkRemarks, startRemarks, stopRemarks } from './blockRemarks.ts';
import { blockWords } from './blockWords.ts';
import type { OrderOfWork, Stint } from './orderStints.ts';
import type { Part } from './parts.ts';
import type { Wefts } from './wefts.ts';

/** The shed of the whole piece: end i on pass j is woven over when (i + j) mod 2 is this. */
export const PARITY = 0;

export const wovenOver = (end: number, pass: number): boolean => (end + pass) % 2 === PARITY;

const bare = (steps: readonly EdgeStep[]): readonly TurnStep[] => steps.map(({ turns, ends }) => ({ turns, ends }));

/** Which stint weaves every cell. */
export function stintOfCells(
  stepped: SteppedChart,
  wefts: Wefts,
  parts: readonly Part[],
  stints: readonly Stint[],
): Int32Array {
  const { ends, passes } = stepped.chart;
  const owner = new Int32Array(ends * passes).fill(-1);
  stints.forEach((stint, index) => {
    const rows = wefts.wefts[parts[stint.part]!.weft]!.rows;
    for (let row = stint.first; row <= stint.last; row++) {
      const { pass, low, high } = rows[row]!;
      owner.fill(index, pass * ends + low, pass * ends + high + 1);
    }
  });
  return owner;
}

/** Blocks that must lie under each: those with a cell right below one of its cells. */
function blocksUnder(owner: Int32Array, ends: number, count: number): readonly (readonly number[])[] {
  const under = Array.from({ length: count }, () => new Set<number>());
  for (let cell = ends; cell < owner.length; cell++) {
    const above = owner[cell]!;
    const below = owner[cell - ends]!;
    if (above !== below && above >= 0 && below >= 0) under[above]!.add(below);
  }
  return under.map((set) => [...set].sort((one, other) => one - other));
}

/**
 * Turns the order of work into blocks with their starts, schedules and words.
 * @param heightOf how high the cloth stands when so many passes are woven, mm.
 */
export function buildBlocks(
  piece: Piece,
  stepped: SteppedChart,
  wefts: Wefts,
  parts: readonly Part[],
  partner: Int32Array,
  order: OrderOfWork,
  heightOf: (passes: number) => number,
): readonly Block[] {
  const { stints } = order;
  const { ends, cells, areas } = stepped.chart;
  const owner = stintOfCells(stepped, wefts, parts, stints);
  const under = blocksUnder(owner, ends, stints.length);
  const names = blockNames(piece, stepped, wefts, parts, stints);
  const lastStintOfWeft = new Map<number, number>();
  return stints.map((stint, place): Block => {
    const part = parts[stint.part]!;
    const weftRows = wefts.wefts[part.weft]!.rows.slice(stint.first, stint.last + 1);
    const rows: readonly BlockRow[] = weftRows.map(({ pass, low, high, right }) =>
      right ? { pass, from: low, to: high } : { pass, from: high, to: low },
    );
    const first = rows[0]!;
    const together = stints.flatMap((other, at) => (other.rise === stint.rise && at !== place ? [at] : []));
    const startsLeft = weftRows[0]!.right;
    const left = edgeSteps(rows, startsLeft, 'left');
    const right = edgeSteps(rows, startsLeft, 'right');
    const middle = weftRows[weftRows.length >> 1]!;
    const cell = middle.pass * ends + ((middle.low + middle.high) >> 1);
    const continues = lastStintOfWeft.get(part.weft) ?? null;
    lastStintOfWeft.set(part.weft, place);
    const image = partner[stint.part]!;
    const partnerOrder = image === -1 ? -1 : partnerStint(stints, place, image);
    const start = {
      end: first.from,
      to: first.to,
      side: startsLeft ? 'left' : 'right',
      over: wovenOver(first.from, first.pass),
    } as const;
    return {
      order: place,
      name: names[place]!,
      yarn: cells[cell]!,
      area: areas[cell]!,
      start,
      rows,
      left: bare(left),
      right: bare(right),
      heights: {
        left: left.map((step) => heightOf(step.topPass)),
        right: right.map((step) => heightOf(step.topPass)),
      },
      words: blockWords(rows, start, left, right, {
        continues,
        waits: stint.first > 0 && continues === null,
        together,
      }),
      after: under[place]!.filter((other) => stints[other]!.rise !== stint.rise),
      partner: partnerOrder === -1 ? null : partnerOrder,
      continues,
      together,
      remarks: [
        ...(stint.first === 0 ? startRemarks(stepped, wefts, part.weft) : []),
        ...(together.length > 0 ? linkRemarks(piece, stepped.chart, weftRows) : []),
        ...stopRemarks(stint, stints, place),
      ],
    };
  });
}

/** The stint of the mirror part woven next to this one, to the same height. */
function partnerStint(stints: readonly Stint[], order: number, image: number): number {
  const part = stints[order]!.part;
  const nth = stints.slice(0, order).filter((stint) => stint.part === part).length;
  let seen = 0;
  for (let at = 0; at < stints.length; at++) {
    if (stints[at]!.part !== image) continue;
    if (seen === nth) return Math.abs(at - order) === 1 ? at : -1;
    seen++;
  }
  return -1;
}

/** Where a block moves out over another that is woven before it; blocks that rise together carry each other. */
export function findOverhangs(blocks: readonly Block[], owner: Int32Array, ends: number): readonly Overhang[] {
  const found = new Map<
    string,
    { block: number; over: number; side: 'left' | 'right'; ends: number; fromPass: number; toPass: number }
  >();
  for (const block of blocks) {
    for (let at = 1; at < block.rows.length; at++) {
      const below = block.rows[at - 1]!;
      const here = block.rows[at]!;
      const belowLow = Math.min(below.from, below.to);
      const belowHigh = Math.max(below.from, below.to);
      const low = Math.min(here.from, here.to);
      const high = Math.max(here.from, here.to);
      for (let end = low; end <= high; end++) {
        if (end >= belowLow && end <= belowHigh) {
          end = belowHigh;
          continue;
        }
        const side = end < belowLow ? 'left' : 'right';
        const over = owner[below.pass * ends + end]!;
        if (block.together.includes(over)) continue;
        const key = `${block.order} ${over} ${side}`;
        const entry = found.get(key);
        if (entry === undefined) {
          found.set(key, { block: block.order, over, side, ends: 1, fromPass: here.pass, toPass: here.pass });
        } else {
          entry.ends++;
          entry.toPass = here.pass;
        }
      }
    }
  }
  return [...found.values()];
}
