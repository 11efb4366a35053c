/** How one end reads from the base upward: cloth, perhaps something lying over the fell, then bare string. */
export interface Layers {
  /** Row above the topmost row of cloth. */
  readonly clothTop: number;
  /** First bare row: above `clothTop` where something lies over the fell, else the same. */
  readonly bareFrom: number;
  /** 1 for rows of bare string that nothing lies over. */
  readonly bare: Uint8Array;
}

const CLOTH = 0;
const OVER_FELL = 1;
const BARE = 2;
const OVER_BARE = 3;
/** What may follow what, going up: cloth → (something over the fell) → bare ⇄ something over bare strings. */
const FROM: readonly (readonly number[])[] = [
  [CLOTH],
  [CLOTH, OVER_FELL],
  [CLOTH, OVER_FELL, BARE, OVER_BARE],
  [BARE, OVER_BARE],
];
/** Something lying over bare strings explains a row a little worse than cloth does: cloth is the rule. */
const COVER_PENALTY = 0.5;

/**
 * The likeliest order of layers up one end, by dynamic programming.
 * @param evidence per row, above 0 bare, below 0 not bare.
 * @param foreign per row, above 0 neither string nor cloth; null when not known yet.
 * @param cover cost of something beginning to lie over the end, in rows' evidence.
 */
export function layersOf(
  evidence: Float32Array,
  foreign: Float32Array | null,
  from: number,
  to: number,
  cover: number,
): Layers {
  const rows = Math.max(0, to - from);
  const back = new Uint8Array(rows * 4);
  let best = [0, Number.NEGATIVE_INFINITY, 0, Number.NEGATIVE_INFINITY];
  for (let r = 0; r < rows; r++) {
    const e = evidence[from + r]!;
    const f = foreign ? foreign[from + r]! : 0;
    const strange = 1.5 * Math.max(0, f);
    // Once cloth and string are learnt, what lies on bare strings must look like neither: a tail that looks like a
    // string with cloth above it is cloth.
    const overBare = foreign ? Math.max(f, -0.3 * e - COVER_PENALTY) : -e - COVER_PENALTY;
    const gain = [-e - strange, foreign ? f : Number.NEGATIVE_INFINITY, e - strange, overBare];
    const next = [0, 0, 0, 0];
    for (let state = 0; state < 4; state++) {
      let top = Number.NEGATIVE_INFINITY;
      let place = state;
      for (const before of FROM[state]!) {
        // The first row may be cloth or bare without having come from anything.
        const begins = (state === OVER_FELL || state === OVER_BARE) && before !== state;
        const value = best[before]! - (begins ? cover : 0);
        if (value > top) {
          top = value;
          place = before;
        }
      }
      next[state] = top + gain[state]!;
      back[r * 4 + state] = place;
    }
    best = next;
  }
  const bare = new Uint8Array(to);
  // Above `to` the end is bare for certain.
  let state = best[OVER_BARE]! > best[BARE]! ? OVER_BARE : BARE;
  if (best[CLOTH]! > best[state]!) state = CLOTH;
  let clothTop = from;
  let bareFrom = to;
  for (let r = rows - 1; r >= 0; r--) {
    if (state === BARE) {
      bare[from + r] = 1;
      bareFrom = from + r;
    }
    if (state === CLOTH) {
      clothTop = from + r + 1;
      break;
    }
    state = back[r * 4 + state]!;
  }
  return { clothTop, bareFrom: Math.max(clothTop, bareFrom), bare };
}
