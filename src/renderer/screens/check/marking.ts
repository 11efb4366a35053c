import type { Marks } from '../../../core/model/marks.ts';
import { type Mm, mm, type PhotoPoint, photoPx } from '../../../core/model/units.ts';
import type { PlainPoint } from './plainPoint.ts';

/** Places in the order they stand in a marking: four inner corners, two ends of a length, four corners of a card. */
export const groups = { corner: [0, 1, 2, 3], length: [4, 5], card: [6, 7, 8, 9] } as const;
export type Group = keyof typeof groups;
const PLACES = 10;

/** What has been marked so far. */
export interface Marking {
  readonly places: readonly (PlainPoint | null)[];
  /** What is asked for beside the corners. */
  readonly asked: readonly Group[];
  /** How far the ends of the length lie apart; 0 until it is typed. */
  readonly length: Mm;
}

export const groupOf = (place: number): Group => (place < 4 ? 'corner' : place < 6 ? 'length' : 'card');

export function markingOf(marks: Marks | null): Marking {
  const places = Array.from({ length: PLACES }, (): PlainPoint | null => null);
  const put = (group: Group, points: readonly (PlainPoint | null)[]) =>
    groups[group].forEach((place, k) => {
      places[place] = points[k] ?? null;
    });
  const known = marks?.lengths[0];
  const asked: Group[] = ['corner'];
  put('corner', marks?.corners ?? []);
  if (known !== undefined) {
    put('length', [known.from, known.to]);
    asked.push('length');
  }
  if (marks?.card) {
    put('card', marks.card);
    asked.push('card');
  }
  return { places, asked, length: known?.length ?? mm(0) };
}

/** Places that are shown, in order. */
export const shownPlaces = ({ asked }: Marking): readonly number[] =>
  (['corner', 'length', 'card'] as const).flatMap((group) => (asked.includes(group) ? [...groups[group]] : []));

/** Where the next touch goes: what was asked for last comes first; -1 when everything is marked. */
export function nextPlace({ asked, places }: Marking): number {
  const inTurn = [...asked].reverse().flatMap((group): readonly number[] => groups[group]);
  return inTurn.find((place) => places[place] === null) ?? -1;
}

/** The mark that was set last in that order of asking; -1 when there is none. */
export function lastPlace({ asked, places }: Marking): number {
  const inTurn = [...asked].reverse().flatMap((group) => [...groups[group]].reverse());
  return inTurn.find((place) => places[place] !== null) ?? -1;
}

export const withPlace = (marking: Marking, place: number, point: PlainPoint | null): Marking => ({
  ...marking,
  places: marking.places.map((each, at) => (at === place ? point : each)),
});

/** Asks for a length or a card, or takes it away again with its marks. */
export function toggled(marking: Marking, group: Exclude<Group, 'corner'>): Marking {
  if (!marking.asked.includes(group)) return { ...marking, asked: [...marking.asked, group] };
  const own: readonly number[] = groups[group];
  return {
    places: marking.places.map((each, at) => (own.includes(at) ? null : each)),
    asked: marking.asked.filter((each) => each !== group),
    length: group === 'length' ? mm(0) : marking.length,
  };
}

export const markedIn = ({ places }: Marking, group: Group): number =>
  groups[group].filter((place) => places[place] !== null).length;

/** What is still lacking before it can be measured; null when nothing is. */
export type Lacking =
  | { readonly kind: 'corners' | 'card' | 'length'; readonly count: number }
  | { readonly kind: 'how-long' };

export function lackingIn(marking: Marking): Lacking | null {
  const asks = (group: Group) => marking.asked.includes(group);
  const left = (group: Group) => groups[group].length - markedIn(marking, group);
  const corners = markedIn(marking, 'corner');
  // One corner alone says nothing; none at all is as good as leaving the loom to be found, if something else is marked.
  const other = asks('length') || asks('card');
  if (corners === 1 || (corners === 0 && !other)) return { kind: 'corners', count: left('corner') };
  if (asks('length') && left('length') > 0) return { kind: 'length', count: left('length') };
  if (asks('length') && !(marking.length > 0)) return { kind: 'how-long' };
  if (asks('card') && left('card') > 0) return { kind: 'card', count: left('card') };
  return null;
}

/** As the reading takes it. Only asked for when nothing is lacking. */
export function marksOf(marking: Marking): Marks {
  const at = (group: Group): (PhotoPoint | null)[] =>
    groups[group].map((place) => {
      const point = marking.places[place];
      return point ? { x: photoPx(point.x), y: photoPx(point.y) } : null;
    });
  const whole = (group: Group): PhotoPoint[] => at(group).filter((point) => point !== null);
  const [from, to] = whole('length');
  const card = whole('card');
  return {
    corners: at('corner'),
    lengths: from !== undefined && to !== undefined ? [{ from, to, length: marking.length }] : [],
    card: card.length === 4 ? card : null,
  };
}

/** Where a mark waits before it is set, in shares of the picture. */
const waiting: readonly (readonly [number, number])[] = [
  [0.15, 0.85],
  [0.85, 0.85],
  [0.85, 0.15],
  [0.15, 0.15],
  [0.3, 0.6],
  [0.7, 0.6],
  [0.38, 0.44],
  [0.62, 0.44],
  [0.62, 0.3],
  [0.38, 0.3],
];

export const waitingPlace = (place: number, width: number, height: number): PlainPoint => {
  const [x, y] = waiting[place] ?? [0.5, 0.5];
  return { x: width * x, y: height * y };
};
