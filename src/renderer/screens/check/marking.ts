import type { Marks } from '../../../core/model/marks.ts';
import { type Mm, type PhotoPoint, photoPx } from '../../../core/model/units.ts';
import type { PlainPoint } from './plainPoint.ts';

/** One thing to mark: the frame's four inner corners, a length by its two ends, a card by its four corners. */
export interface Thing {
  readonly kind: 'corner' | 'length' | 'card';
  readonly points: readonly (PlainPoint | null)[];
  /** How far the ends of a length lie apart; null until it is typed, and of anything else. */
  readonly length: Mm | null;
}

/** What has been marked so far: the corners first, then what was asked for, in that order. */
export type Marking = readonly Thing[];

/** One mark: the thing it belongs to and which of its points it is. */
export interface Place {
  readonly thing: number;
  readonly point: number;
}

/** As many known lengths as a check keeps. */
export const MOST_LENGTHS = 6;

const unmarked = (count: number): null[] => Array.from({ length: count }, () => null);
const newLength = (): Thing => ({ kind: 'length', points: unmarked(2), length: null });
const newCard = (): Thing => ({ kind: 'card', points: unmarked(4), length: null });

export const markingOf = (marks: Marks | null): Marking => [
  { kind: 'corner', points: marks?.corners ?? unmarked(4), length: null },
  ...(marks?.lengths ?? []).map(({ from, to, length }): Thing => ({ kind: 'length', points: [from, to], length })),
  ...(marks?.card ? [{ ...newCard(), points: marks.card }] : []),
];

/** Every mark that is shown, in order. */
export const placesOf = (marking: Marking): readonly Place[] =>
  marking.flatMap(({ points }, thing) => points.map((_, point) => ({ thing, point })));

export const pointAt = (marking: Marking, place: Place): PlainPoint | null =>
  marking[place.thing]?.points[place.point] ?? null;

export const withPoint = (marking: Marking, place: Place, point: PlainPoint | null): Marking =>
  marking.map((thing, at) =>
    at === place.thing
      ? { ...thing, points: thing.points.map((each, k) => (k === place.point ? point : each)) }
      : thing,
  );

export const withLength = (marking: Marking, thing: number, length: Mm): Marking =>
  marking.map((each, at) => (at === thing ? { ...each, length } : each));

/** Where the next touch goes: what was asked for last comes first; null when everything is marked. */
export function nextPlace(marking: Marking): Place | null {
  for (const [thing, { points }] of [...marking.entries()].reverse()) {
    const point = points.indexOf(null);
    if (point >= 0) return { thing, point };
  }
  return null;
}

/** The same without its newest mark; what was asked for last and has none goes itself. */
export function takenBack(marking: Marking): Marking {
  const last = marking.length - 1;
  if (last > 0 && marking[last]!.points.every((point) => point === null)) return without(marking, last);
  for (const [thing, { points }] of [...marking.entries()].reverse()) {
    const point = points.findLastIndex((each) => each !== null);
    if (point >= 0) return withPoint(marking, { thing, point }, null);
  }
  return marking;
}

export const without = (marking: Marking, thing: number): Marking => marking.filter((_, at) => at !== thing);

/** Lengths, each with where it stands among the things. */
export const lengthsOf = (marking: Marking): readonly { readonly thing: number; readonly length: Mm | null }[] =>
  marking.flatMap(({ kind, length }, thing) => (kind === 'length' ? [{ thing, length }] : []));

export const cardOf = (marking: Marking): number => marking.findIndex(({ kind }) => kind === 'card');

/** Whether one more length can be asked for: the one before is marked, and a check has room for it. */
export const takesLength = (marking: Marking): boolean => {
  const lengths = marking.filter(({ kind }) => kind === 'length');
  return lengths.length < MOST_LENGTHS && lengths.every(({ points }) => !points.includes(null));
};

export const withNewLength = (marking: Marking): Marking =>
  takesLength(marking) ? [...marking, newLength()] : marking;

/** Asks for a card, or takes it away again with its marks. */
export function withCardOrWithout(marking: Marking): Marking {
  const card = cardOf(marking);
  return card < 0 ? [...marking, newCard()] : without(marking, card);
}

/** The letters of a length's two ends: A and B of the first, C and D of the second. */
export function lettersOf(marking: Marking, thing: number): readonly [string, string] {
  const before = marking.slice(0, thing).filter(({ kind }) => kind === 'length').length;
  return [String.fromCharCode(65 + 2 * before), String.fromCharCode(66 + 2 * before)];
}

export const markedIn = (thing: Thing): number => thing.points.filter((point) => point !== null).length;

/** What is still lacking before it can be measured; null when nothing is. */
export type Lacking =
  | { readonly kind: 'corner' | 'card' | 'length'; readonly count: number }
  | { readonly kind: 'how-long'; readonly letters: readonly [string, string] };

export function lackingIn(marking: Marking): Lacking | null {
  for (const [at, thing] of marking.entries()) {
    const marked = markedIn(thing);
    const count = thing.points.length - marked;
    if (thing.kind === 'corner') {
      // One corner alone says nothing; none at all is as good as leaving the loom to be found, if something else is marked.
      if (marked === 1 || (marked === 0 && marking.length === 1)) return { kind: 'corner', count };
    } else if (count > 0) return { kind: thing.kind, count };
    else if (thing.kind === 'length' && thing.length === null)
      return { kind: 'how-long', letters: lettersOf(marking, at) };
  }
  return null;
}

const photoPoint = ({ x, y }: PlainPoint): PhotoPoint => ({ x: photoPx(x), y: photoPx(y) });

/** As the reading takes it. Only asked for when nothing is lacking. */
export function marksOf(marking: Marking): Marks {
  const whole = ({ points }: Thing): PhotoPoint[] =>
    points.flatMap((point) => (point === null ? [] : [photoPoint(point)]));
  const card = marking.find(({ kind }) => kind === 'card');
  return {
    corners: marking[0]!.points.map((point) => (point === null ? null : photoPoint(point))),
    lengths: marking.flatMap((thing) => {
      const [from, to] = whole(thing);
      return thing.length === null || from === undefined || to === undefined
        ? []
        : [{ from, to, length: thing.length }];
    }),
    card: card === undefined ? null : whole(card),
  };
}

/** Where a mark waits before it is set, in shares of the picture; a further length lower than the one before. */
const waiting = {
  corner: [
    [0.15, 0.85],
    [0.85, 0.85],
    [0.85, 0.15],
    [0.15, 0.15],
  ],
  length: [
    [0.3, 0.56],
    [0.7, 0.56],
  ],
  card: [
    [0.38, 0.44],
    [0.62, 0.44],
    [0.62, 0.3],
    [0.38, 0.3],
  ],
} as const;

export function waitingPlace(marking: Marking, { thing, point }: Place, width: number, height: number): PlainPoint {
  const { kind } = marking[thing]!;
  const [x, y] = waiting[kind][point] ?? [0.5, 0.5];
  const before = marking.slice(0, thing).filter((each) => each.kind === 'length').length;
  const lower = kind === 'length' ? (before % 3) * 0.13 : 0;
  return { x: width * x, y: height * (y + lower) };
}
