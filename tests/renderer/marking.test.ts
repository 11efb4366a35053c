import { describe, expect, it } from 'vitest';
import { mm, photoPx } from '../../src/core/model/units.ts';
import {
  lackingIn,
  lettersOf,
  type Marking,
  MOST_LENGTHS,
  markingOf,
  marksOf,
  nextPlace,
  placesOf,
  takenBack,
  takesLength,
  withCardOrWithout,
  withLength,
  withNewLength,
  without,
  withPoint,
} from '../../src/renderer/screens/check/marking.ts';

const at = (x: number, y: number) => ({ x: photoPx(x), y: photoPx(y) });

/** Touches the photograph once, where the next mark goes. */
function touch(marking: Marking): Marking {
  const next = nextPlace(marking);
  if (next === null) throw new Error('Nothing is left to mark.');
  return withPoint(marking, next, at(10 * next.thing, 10 * next.point + 1));
}

const times = (count: number, marking: Marking): Marking =>
  Array.from({ length: count }).reduce<Marking>((before) => touch(before), marking);

/** One more length, its ends touched and its size typed. */
const measuredLength = (marking: Marking, length: number): Marking => {
  const asked = times(2, withNewLength(marking));
  return withLength(asked, asked.length - 1, mm(length));
};

describe('marking a photograph', () => {
  it('asks for the four corners first', () => {
    const none = markingOf(null);
    expect(lackingIn(none)).toEqual({ kind: 'corner', count: 4 });
    expect(lackingIn(times(1, none))).toEqual({ kind: 'corner', count: 3 });
    expect(lackingIn(times(2, none))).toBeNull();
    expect(nextPlace(times(4, none))).toBeNull();
  });

  it('takes several lengths, each with letters of its own, and gives all of them to the reading', () => {
    const marking = measuredLength(measuredLength(times(4, markingOf(null)), 100), 50);
    expect([lettersOf(marking, 1), lettersOf(marking, 2)]).toEqual([
      ['A', 'B'],
      ['C', 'D'],
    ]);
    expect(lackingIn(marking)).toBeNull();
    expect(marksOf(marking).lengths).toEqual([
      { from: at(10, 1), to: at(10, 11), length: 100 },
      { from: at(20, 1), to: at(20, 11), length: 50 },
    ]);
  });

  it('starts a length without a size, and says which size is lacking', () => {
    const marking = times(2, withNewLength(measuredLength(markingOf(null), 100)));
    expect(lackingIn(marking)).toEqual({ kind: 'how-long', letters: ['C', 'D'] });
  });

  it('asks for a further length only once the one before is marked, and for no more than are kept', () => {
    const half = withNewLength(markingOf(null));
    expect(withNewLength(half)).toBe(half);
    let full = markingOf(null);
    for (let count = 0; count < MOST_LENGTHS; count++) full = measuredLength(full, 100);
    expect(takesLength(full)).toBe(false);
    expect(marksOf(withNewLength(full)).lengths).toHaveLength(MOST_LENGTHS);
  });

  it('takes back the newest mark first, and what was asked for and has none', () => {
    const corners = times(4, markingOf(null));
    const one = touch(withNewLength(corners));
    expect(takenBack(takenBack(one))).toEqual(corners);
    expect(marksOf(takenBack(corners)).corners).toEqual([at(0, 1), at(0, 11), at(0, 21), null]);
    expect(takenBack(markingOf(null))).toEqual(markingOf(null));
  });

  it('takes one length away and keeps the other and the card', () => {
    const marking = times(4, withCardOrWithout(measuredLength(measuredLength(markingOf(null), 100), 50)));
    const left = marksOf(without(marking, 1));
    expect(left.lengths.map(({ length }) => length)).toEqual([50]);
    expect(left.card).toHaveLength(4);
    expect(marksOf(withCardOrWithout(marking)).card).toBeNull();
  });

  it('comes back as it was kept', () => {
    const marks = {
      corners: [at(1, 2), null, at(3, 4), null],
      lengths: [
        { from: at(5, 6), to: at(7, 8), length: mm(150) },
        { from: at(9, 1), to: at(9, 2), length: mm(60) },
      ],
      card: [at(1, 1), at(2, 1), at(2, 2), at(1, 2)],
    };
    expect(marksOf(markingOf(marks))).toEqual(marks);
    expect(placesOf(markingOf(marks))).toHaveLength(12);
  });
});
