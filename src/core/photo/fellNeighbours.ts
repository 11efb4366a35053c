import { measurement } from '../model/measurement.ts';
import type { EndFell } from './endFell.ts';
import { stepsTowards } from './stepsTowards.ts';

/** An end may stand out from both neighbours by a turn without anyone wondering, in passes. */
const USUAL_STEP = 2.2;
/** One end standing out by more than this, mm, and more than the steps beside it, is not believed. */
const UNBELIEVED = 4;
/** Nor one that goes so many passes (or mm, for fine cloth) beyond a pass and the steps beside it. */
const BEYOND_BELIEF = 2.5;

/**
 * Doubts an end that stands out from both its neighbours: shaped cloth steps from end to end, but one end alone far
 * above or below both is more often a tail, a mark or a hair than weaving.
 * @param ends one after another, by number.
 */
export function doubtLoners(ends: readonly EndFell[], pass: number): EndFell[] {
  return doubtAlone(doubtOuter(doubtInner(ends, pass)));
}

/** An end that nothing is seen beside is believed only so far from the nearest one that is, mm. */
const UNBELIEVED_ALONE = 25;

/** Doubts ends both of whose neighbours are hidden: what hides those may have been taken for this one's cloth. */
function doubtAlone(ends: readonly EndFell[]): EndFell[] {
  const height = (i: number): number | null => ends[i]?.fell?.value ?? null;
  return ends.map((end, i) => {
    const here = height(i);
    if (here === null || height(i - 1) !== null || height(i + 1) !== null) return end;
    for (let away = 2; away < ends.length; away++) {
      const near = [height(i - away), height(i + away)].filter((value) => value !== null);
      if (near.length === 0) continue;
      if (near.some((value) => Math.abs(value - here) <= UNBELIEVED_ALONE)) return end;
      return { ...end, fell: null, why: 'its neighbours are hidden and it stops far from the next ones' };
    }
    return end;
  });
}

/** An outer end has a neighbour on one side only, and is believed farther, mm. */
const UNBELIEVED_OUTER = 12;

/** Doubts ends with one neighbour only: the outer ones, and those beside an end on which something lies. */
function doubtOuter(ends: readonly EndFell[]): EndFell[] {
  const height = (i: number): number | null => ends[i]?.fell?.value ?? null;
  return ends.map((end, i) => {
    const here = height(i);
    if (here === null || (height(i - 1) === null) === (height(i + 1) === null)) return end;
    const inward = height(i - 1) === null ? 1 : -1;
    const next = height(i + inward)!;
    const after = height(i + 2 * inward);
    const steep = after === null ? 0 : Math.abs(next - after);
    const outer = i === 0 || i === ends.length - 1;
    if (Math.abs(here - next) <= Math.max(outer ? UNBELIEVED_OUTER : 1.5 * UNBELIEVED, 2.5 * steep)) return end;
    return { ...end, fell: null, why: 'its neighbour stops far from here, so something may lie over it' };
  });
}

function doubtInner(ends: readonly EndFell[], pass: number): EndFell[] {
  const height = (i: number): number | null => ends[i]?.fell?.value ?? null;
  return ends.map((end, i) => {
    const here = height(i);
    const left = height(i - 1);
    const right = height(i + 1);
    if (!end.fell || here === null || left === null || right === null) return end;
    const low = Math.min(left, right) - USUAL_STEP * pass;
    const high = Math.max(left, right) + USUAL_STEP * pass;
    const apart = Math.max(low - here, here - high, 0);
    if (apart === 0) return end;
    const steep = stepsTowards([height(i - 2), left, right, height(i + 2)], here < low);
    // What goes beyond a pass and the steps beside it is hardly weaving.
    const beyond = Math.max(0, apart + (USUAL_STEP - 1) * pass - steep);
    if (apart > Math.max(UNBELIEVED, steep) || beyond > BEYOND_BELIEF * Math.max(1, pass)) {
      return { ...end, fell: null, why: 'its neighbours stop far from here, so something may lie over it' };
    }
    const { value, sigma, n, source } = end.fell;
    return { ...end, fell: measurement(value, Math.hypot(sigma, apart / 2, beyond), n, source) };
  });
}
