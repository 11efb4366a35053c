import type { Piece } from '../model/piece.ts';
import type { Chart } from '../model/plan.ts';
import type { Plan } from '../plan/planPiece.ts';
import { planPiece } from '../plan/planPiece.ts';

/** Places kept of a figure that isn't a count: enough for a hundredth of a hair, few enough to give the same bytes. */
const round = (value: number): number => {
  const rounded = Math.round(value * 1e4) / 1e4;
  return rounded === 0 ? 0 : rounded;
};

/** Run lengths of yarn from the left, for every pass from the lowest: `[[yarn, count], …]`. */
function chartRows(chart: Chart): readonly (readonly (readonly [number, number])[])[] {
  const rows: [number, number][][] = [];
  for (let pass = 0; pass < chart.passes; pass++) {
    const row: [number, number][] = [];
    for (let end = 0; end < chart.ends; end++) {
      const yarn = chart.cells[pass * chart.ends + end]!;
      const last = row.at(-1);
      if (last !== undefined && last[0] === yarn) last[1]++;
      else row.push([yarn, 1]);
    }
    rows.push(row);
  }
  return rows;
}

/**
 * A plan as the `plan --json` command prints it. Ends, passes, blocks and rows count from 0; ends from the left, passes
 * from the lowest, header included; lengths in mm in the cloth frame (x from the middle of the cloth, y up from its
 * base); yarns by their place in the piece's list. Words count ends and blocks from 1, as on screen.
 *
 * - `plumbweft`: `plan`, and `version` of this form.
 * - `piece`: the piece's name.
 * - `warp`: `ends`, `strings` (two to an end where the warp is doubled), `notches` used, `first_notch`, `loops` at the
 *   top, `length_m` of string to cut and its `grams`.
 * - `chart`: `ends`, `passes`, `pass_mm` (height of a pass), `pitch_mm` (between ends), `rows`: for every pass the run
 *   lengths `[yarn, count]` from the left.
 * - `parity`: end i on pass j is woven over when (i + j) mod 2 is this.
 * - `blocks`, in weaving order. `order`: its place. `name`. `yarn`. `start`: the weft begins on `end`, at the block's
 *   `side` edge, passing it `over` or under, and the first pass stops at `to`. `rows`: every pass in the order woven,
 *   `from` → `to` as the weft travels, both ends included, each beginning on the end where the last stopped. `left`,
 *   `right`: make `turns` turns at that edge where it stands, then move it by `ends` (positive outward); a first or last
 *   half turn is 0.5. `heights_mm`: how high the cloth is at the top of each step of `left` and `right`. `words`: the
 *   same as sentences. `after`: blocks that lie under it. `partner`: its mirror image, or null. `continues`: the block
 *   whose weft goes on here without a new tail, or null. `together`: blocks whose wefts rise with it, row by row.
 *   `remarks`: why it stops or starts as it does.
 * - `sequence`: empty where blocks are woven one after another; else every row of the piece in weaving order, as pairs
 *   of block and row.
 * - `slits`: `between` two ends, `from_pass` to `to_pass` both included, `length_mm`, `remedy`.
 * - `overhangs`: `block` moves out `over` another at its `side`, by `ends` in all, `from_pass` to `to_pass`.
 * - `joins`: in `block`, on `pass`, a new working length begins at `end`.
 * - `edges`: for each shape and side the largest distance in x of the stepped edge from the drawn line, `largest_mm`, the
 *   height where that is, `largest_at_mm`, and what is left of such distances after half an end and the line's own run in
 *   one turn, `excess_mm`.
 * - `areas`: for each shape the area that shows in the drawing, `drawn_mm2`, and `woven_mm2`; `middles_mm2`, that of the
 *   cells whose middles the drawing covers; `boundary_rows`, passes on which it has an edge inside the cloth, drawn or woven.
 * - `yarns`: `yarn` (place in the list), `name`, `metres`, `grams`, `balls` (null when nothing says what is in a ball),
 *   `pieces` (working lengths to wind).
 * - `tails`: to tuck in. `hours`: rough.
 * - `hanging`: `load_g` below the dowel; `dowel_mm` long and `dowel_thick_mm` thick; `sag_mm`, its bow after months;
 *   `loop_groups`, loops in each group from the left; `cord_mm`; `fringe_mm`; `cautions`.
 * - `finishing`: `step` and `caution` (or null), in order.
 * - `ornaments`: `id`, `name`, `count`; the nearest `end` and `pass` under its middle; `x_mm`, `y_mm`; `grams` of all;
 *   `held_by`; `cautions`.
 * - `shopping`: `item`, `amount`, `note`, in the piece's own units.
 * - `marks`: for each end the heights where the cartoon's lines cross it, `heights_mm`.
 */
export function planDocument(piece: Piece, plan: Plan): unknown {
  const { chart, materials } = plan;
  return {
    plumbweft: 'plan',
    version: 1,
    piece: piece.name,
    warp: {
      ends: materials.warp.ends,
      strings: materials.warp.strings,
      notches: materials.warp.notches,
      first_notch: piece.warp.firstNotch,
      loops: materials.warp.loops,
      length_m: round(materials.warp.length),
      grams: round(materials.warp.grams),
    },
    chart: {
      ends: chart.ends,
      passes: chart.passes,
      pass_mm: round(chart.passHeight),
      pitch_mm: round(chart.pitch),
      rows: chartRows(chart),
    },
    parity: plan.parity,
    blocks: plan.blocks.map((block) => ({
      order: block.order,
      name: block.name,
      yarn: block.yarn,
      start: block.start,
      rows: block.rows,
      left: block.left,
      right: block.right,
      heights_mm: { left: block.heights.left.map(round), right: block.heights.right.map(round) },
      words: block.words,
      after: block.after,
      partner: block.partner,
      continues: block.continues,
      together: block.together,
      remarks: block.remarks,
    })),
    sequence: plan.sequence.map(({ block, row }) => [block, row]),
    slits: plan.slits.map((slit) => ({
      between: slit.between,
      from_pass: slit.fromPass,
      to_pass: slit.toPass,
      length_mm: round(slit.lengthMm),
      remedy: slit.remedy,
    })),
    overhangs: plan.overhangs.map(({ block, over, side, ends, fromPass, toPass }) => ({
      block,
      over,
      side,
      ends,
      from_pass: fromPass,
      to_pass: toPass,
    })),
    joins: plan.joins,
    edges: plan.edges.map(({ shape, side, largestMm, largestAtMm, excessMm }) => ({
      shape,
      side,
      largest_mm: round(largestMm),
      largest_at_mm: round(largestAtMm),
      excess_mm: round(excessMm),
    })),
    areas: plan.areas.map(({ shape, drawnMm2, wovenMm2, middlesMm2, boundaryRows }) => ({
      shape,
      drawn_mm2: round(drawnMm2),
      woven_mm2: round(wovenMm2),
      middles_mm2: round(middlesMm2),
      boundary_rows: boundaryRows,
    })),
    yarns: materials.yarns.map((need, index) => ({
      yarn: index,
      name: need.name,
      metres: round(need.metres),
      grams: round(need.grams),
      balls: need.balls,
      pieces: need.pieces,
    })),
    tails: materials.tails,
    hours: round(materials.hours.total),
    hanging: {
      load_g: round(plan.hanging.load),
      dowel_mm: round(plan.hanging.dowel.length),
      dowel_thick_mm: plan.hanging.dowel.diameter,
      sag_mm: round(plan.hanging.dowel.sag.later),
      loop_groups: plan.hanging.loopGroups,
      cord_mm: round(plan.hanging.cord.length),
      fringe_mm: round(plan.hanging.fringe.length),
      cautions: plan.hanging.cautions,
    },
    finishing: plan.finishing,
    ornaments: plan.ornaments.map((ornament, index) => ({
      id: ornament.id,
      name: ornament.name,
      count: ornament.count,
      end: ornament.place.end,
      pass: ornament.place.pass,
      x_mm: round(piece.ornaments[index]?.at.x ?? 0),
      y_mm: round(piece.ornaments[index]?.at.y ?? 0),
      grams: round(ornament.grams),
      held_by: ornament.heldBy,
      cautions: ornament.cautions,
    })),
    shopping: plan.shopping,
    marks: plan.marks.map(({ end, heightsMm }) => ({ end, heights_mm: heightsMm.map(round) })),
  };
}

/** The text of `plan --json`, ending in a line break; the same piece always gives the same bytes. */
export const planJson = (piece: Piece): string => `${JSON.stringify(planDocument(piece, planPiece(piece)))}\n`;
