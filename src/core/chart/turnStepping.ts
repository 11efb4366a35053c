import { chooseBits } from './chooseBits.ts';
import { boundariesBelow, levelPreferences, type Stretch } from './levelEdges.ts';
import { FEWEST_ROWS, mirroredEdges } from './mirroredEdges.ts';
import { rowRuns, runStop } from './rowRuns.ts';
import { type Links, linkDown, sameStretch } from './stretches.ts';
import { finishTips, type Tip, tipsUnder } from './tips.ts';

/*
 * How a drawing becomes rows a hand can weave.
 *
 * A weft turns round an end: the pass that arrives and the pass that leaves both reach it. So a weft that travels right
 * on pass j has its right edge in one place on passes j and j + 1, and its left edge in one place on j + 1 and j + 2:
 * each edge stands still for pairs of passes, and the two edges of a weft step one pass apart. What a weft does is
 * settled by one bit: whether it travels right on the even passes (bit 0) or on the odd ones (bit 1).
 *
 * Between two wefts lies one boundary, the right edge of one and the left edge of the other. It can step only where
 * both may, and that is nowhere if their bits are equal and on every second pass if they differ: they arrive together
 * and part together. So along a pass the bits of neighbours alternate wherever the boundary between them ever steps. A
 * boundary that never steps asks nothing.
 *
 * Bits are chosen stretch by stretch. A stretch is a run of passes over which the same areas lie side by side; at its
 * foot some area is born, ends, parts or joins. A weft that goes on from the stretch below would keep its bit, or it
 * must end and another begin from its other side. The bits of a stretch are the cheapest that let every stepping
 * boundary step: one fresh weft costs 1, and two neighbours that travel the same way along an upright boundary a
 * quarter, because wefts that meet and part keep the sheds in order. Where that leaves a choice, it is the one that meets
 * most of the level edges above on their own pass.
 *
 * Where a boundary may step it takes its place from one row of the drawing. Both edges of a symmetric shape must step by
 * the same counts although they stand one pass apart, so both read the same rows of the drawing: every second one,
 * counted from the row where the boundary began (its anchor). A boundary whose turns start on rows of the anchor's
 * parity reads the upper row of each turn, the other reads the lower: half a pass early and half a pass late, so a
 * symmetric shape keeps its area and no edge is further off than half an end and what the line runs in one pass. A flat
 * line without such an image reads both rows of its turn and stands half way, so that its area is kept too.
 */

/** What the stepping made of a drawing. */
export interface Stepped {
  readonly ends: number;
  readonly passes: number;
  /** Label of every cell, as given, but with edges that a hand can weave. */
  readonly labels: Uint16Array;
  /** For every cell 1 where its weft travels right, else 0. */
  readonly right: Uint8Array;
}

/** What the borders of a drawing ask for; a cell stands for the border left of it. */
export interface BorderRules {
  /** Wefts that meet even where the border never steps, because they are held together there. */
  readonly mustMeet: (cell: number) => boolean;
  /** The line followed to the nearest pass, though the two edges of a shape may then differ by one. */
  readonly toThePass: (cell: number) => boolean;
}

/** Rows that are on the loom already: their labels are the drawing's, and their wefts travel as they did. */
export interface WovenRows {
  readonly rows: number;
  readonly right: Uint8Array;
}

/** Cost of ending one weft and beginning another from its other side. */
const FRESH_WEFT = 1;
/** Cost of two neighbours travelling the same way along an upright boundary. */
const SAME_WAY = 0.25;
/** Cost of every cell of a level edge that would come a pass late, and the most it may come to for one weft. */
const LEVEL_EDGE = 0.005;
const LEVEL_EDGE_MOST = 0.2;
const IMPOSSIBLE = 1e6;

/**
 * Whether a run at the foot of a stretch can be woven on by the weft under it, given its bit: that weft must have
 * stopped on the end where this run begins, so the edge on that side is one that goes on from below.
 */
function goesOn(links: Links, belowBits: Uint8Array, from: Int32Array, foot: number, at: number, bit: number): boolean {
  const startsLeft = ((foot + bit) & 1) === 0;
  const under = startsLeft ? links.first[at]! : links.last[at]!;
  if (under === -1 || belowBits[under] !== bit) return false;
  if (startsLeft) return at === 0 ? under === 0 : under > 0 && from[at - 1] === under - 1;
  return at === from.length ? under === belowBits.length - 1 : from[at] === under;
}

/** Cells a row of a stretch that one of its areas may gain by a point woven a pass taller. */
const TIP_AREA = 0.5;
/** A line that runs this many ends in four passes is flat. */
const FLAT_IN_FOUR = 2;
/** A run of more ends than this in one pass, and of three times the passes beside it, is a level edge and not a slope. */
const LEVEL_FROM = 4;

/**
 * Where a line stands half way through a turn. A level edge has no half way: it stays on its own pass.
 * @param below where it stands a pass below the turn, `lower` and `upper` on its two passes, `above` a pass above it; null
 * where it isn't drawn.
 */
function halfWay(below: number | null, lower: number, upper: number, above: number | null): number {
  const run = Math.abs(upper - lower);
  if (below !== null && above !== null && run > LEVEL_FROM) {
    if (run > 3 * Math.max(Math.abs(lower - below), Math.abs(above - upper))) return lower;
  }
  const sum = lower + upper;
  if (sum % 2 === 0) return sum / 2;
  // The even one of two ends that are equally near, so that neither side gains.
  const near = (sum - 1) / 2;
  return near % 2 === 0 ? near : near + 1;
}

/**
 * The row of the drawing an edge takes its place from when it steps on `row`: the second row of the turn as counted from
 * its anchor. An edge that ends within the turn stays where its last whole turn was.
 * @param last the highest row on which the edge is drawn.
 */
function rowToRead(row: number, anchor: number, foot: number, last: number): number {
  const reads = (row & 1) === anchor ? row + 1 : row;
  if (reads <= last) return reads;
  return reads - 2 >= foot ? reads - 2 : row;
}

/**
 * Turns a drawing into rows a hand can weave; the reasoning stands at the head of this file.
 * @param drawn a label for every cell, end by end along each pass, lowest pass first. Neighbouring cells of one label
 * are one area.
 * @param woven rows at the foot to leave as they are.
 */
export function stepByTurns(
  drawn: Uint16Array,
  ends: number,
  rules: BorderRules,
  woven: WovenRows | null = null,
): Stepped {
  const runs = rowRuns(drawn, ends);
  const passes = runs.rows;
  const labels = new Uint16Array(drawn.length);
  const right = new Uint8Array(drawn.length);
  // What the stretch below leaves behind.
  let belowBits: Uint8Array = new Uint8Array(0);
  let belowPlace: Int32Array = new Int32Array(0);
  let belowAnchor: Uint8Array = new Uint8Array(0);
  let tips: readonly Tip[] = [];
  const begun = woven === null ? 0 : Math.min(woven.rows, passes);
  if (woven !== null && begun > 0) {
    labels.set(drawn.subarray(0, begun * ends));
    right.set(woven.right.subarray(0, begun * ends));
    const last = begun - 1;
    const starts = runs.start.subarray(runs.offset[last]!, runs.offset[begun]!);
    belowBits = Uint8Array.from(starts, (end) => (right[last * ends + end]! === 1 ? last : last + 1) & 1);
    belowPlace = Int32Array.from(starts.subarray(1));
    belowAnchor = new Uint8Array(belowPlace.length).fill(begun & 1);
  }
  const stretches: Stretch[] = [];
  for (let foot = begun; foot < passes; foot = stretches.at(-1)!.head) {
    let head = foot + 1;
    while (head < passes && sameStretch(runs, head)) head++;
    stretches.push({ foot, head, links: foot > 0 ? linkDown(runs, foot) : null });
  }
  const preferences = levelPreferences(runs, stretches);
  for (const [index, { foot, head, links }] of stretches.entries()) {
    const base = runs.offset[foot]!;
    const count = runs.offset[foot + 1]! - base;

    const from = boundariesBelow(links, count);
    // Where each boundary reads its place on the row over the head.
    const over = new Int32Array(Math.max(0, count - 1)).fill(-1);
    if (head < passes) {
      const up = linkDown(runs, head);
      for (let at = 0; at < up.first.length - 1; at++) {
        const under = up.last[at]!;
        if (under >= 0 && up.first[at + 1] === under + 1) over[under] = runs.start[runs.offset[head]! + at + 1]!;
      }
    }
    const drawnPlace = (at: number, row: number): number =>
      row < head ? runs.start[runs.offset[row]! + at + 1]! : over[at]!;

    const keep = new Float64Array(count * 2);
    const meet = new Float64Array(Math.max(0, count - 1));
    for (let at = 0; at < count && links !== null; at++) {
      for (let bit = 0; bit < 2; bit++) {
        if (!goesOn(links, belowBits, from, foot, at, bit)) keep[at * 2 + bit]! += FRESH_WEFT;
      }
    }
    for (let at = 0; at + 1 < count; at++) {
      let steps = rules.mustMeet(foot * ends + runs.start[base + at + 1]!);
      const place = runs.start[base + at + 1]!;
      if (from[at]! >= 0) {
        steps ||= place !== runs.start[runs.offset[foot - 1]! + from[at]! + 1]! || place !== belowPlace[from[at]!]!;
      }
      for (let row = foot + 1; row < head && !steps; row++) steps = drawnPlace(at, row) !== place;
      meet[at] = steps ? IMPOSSIBLE : SAME_WAY;
    }
    for (const [at, cells] of preferences[index]!.entries()) {
      keep[at * 2 + (cells > 0 ? 1 : 0)]! += Math.min(LEVEL_EDGE_MOST, Math.abs(cells) * LEVEL_EDGE);
    }
    // Nothing decides: the leftmost weft starts at the left.
    keep[1 - (foot & 1)]! += 1e-3;
    const bits = chooseBits(keep, meet);

    const anchor = new Uint8Array(Math.max(0, count - 1));
    for (let at = 0; at + 1 < count; at++) anchor[at] = from[at]! >= 0 ? belowAnchor[from[at]!]! : foot & 1;
    const held = new Uint8Array(count);
    for (let at = 0; at < count && links !== null; at++) {
      held[at] = goesOn(links, belowBits, from, foot, at, bits[at]!) ? 1 : 0;
    }

    const mayStep = (at: number, row: number): boolean =>
      ((row === foot && held[at] === 0) || ((row + bits[at]!) & 1) === 0) &&
      ((row === foot && held[at + 1] === 0) || ((row + bits[at + 1]!) & 1) === 1);

    const mirrored = mirroredEdges(runs, foot, head);
    // Cells woven beyond those drawn, by area.
    const gained = new Int32Array(count);
    let place: Int32Array = new Int32Array(Math.max(0, count - 1));
    for (let row = foot; row < head; row++) {
      const next = new Int32Array(place.length);
      for (let at = 0; at < place.length; at++) {
        const born = row === foot && from[at] === -1;
        if (born || mayStep(at, row)) {
          const last = over[at]! >= 0 ? head : head - 1;
          // Half a pass early or late is nothing on a steep line. On a flat one it would widen or narrow an area unless
          // its other edge, the image of this one, makes it good.
          const flat =
            mirrored[at] === 0 &&
            (head - foot < FEWEST_ROWS ||
              Math.abs(drawnPlace(at, Math.min(row + 2, last)) - drawnPlace(at, Math.max(row - 2, foot))) >=
                FLAT_IN_FOUR);
          const toThePass = flat || rules.toThePass(foot * ends + runs.start[base + at + 1]!);
          // Half a turn, where the edge begins just under its first step or ends just over its last one.
          const half = row === last || (born && mayStep(at, row + 1));
          if (!toThePass) next[at] = drawnPlace(at, rowToRead(row, anchor[at]!, foot, last));
          else if (half) next[at] = drawnPlace(at, row);
          else {
            next[at] = halfWay(
              born ? null : drawnPlace(at, Math.max(row - 1, foot)),
              drawnPlace(at, row),
              drawnPlace(at, row + 1),
              row + 1 === last ? null : drawnPlace(at, row + 2),
            );
          }
        } else {
          next[at] = row === foot ? belowPlace[from[at]!]! : place[at]!;
        }
      }
      // An area never closes to nothing inside its stretch.
      for (let at = 0; at < next.length; at++) next[at] = Math.max(next[at]!, (at > 0 ? next[at - 1]! : 0) + 1);
      for (let at = next.length - 1; at >= 0; at--) {
        next[at] = Math.min(next[at]!, (at + 1 < next.length ? next[at + 1]! : ends) - 1);
      }
      for (let at = 0; at < count; at++) {
        const start = row * ends + (at > 0 ? next[at - 1]! : 0);
        const stop = row * ends + (at < next.length ? next[at]! : ends);
        const index = runs.offset[row]! + at;
        gained[at]! += stop - start - (runStop(runs, row, index) - runs.start[index]!);
        labels.fill(runs.label[base + at]!, start, stop);
        if (((row + bits[at]!) & 1) === 0) right.fill(1, start, stop);
      }
      place = next;
    }
    if (foot > 0) finishTips(tips, labels, right, ends, foot);
    tips = tipsUnder(runs, head, place, bits, anchor, (at) => meet[at] === IMPOSSIBLE).filter(
      // A round head is no point: a pass more there would be seen.
      ({ at, low, high }) => gained[at]! + high + 1 - low <= Math.max(1, (head - foot) * TIP_AREA),
    );
    belowBits = bits;
    belowPlace = place;
    belowAnchor = anchor;
  }
  return { ends, passes, labels, right };
}
