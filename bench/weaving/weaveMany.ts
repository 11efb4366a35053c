/**
 * Weaves generated pieces on the virtual loom and prints what came of it.
 * npm run weave -- [pieces] [first seed]
 */
import { z } from 'zod';
import { allFaults } from '../../tests/virtual-weaver/faults.ts';
import { familyOf, generatedPiece } from '../../tests/virtual-weaver/generatedPiece.ts';
import { weaverPlanSchema } from '../../tests/virtual-weaver/planDocument.ts';
import { weavePiece } from '../../tests/virtual-weaver/weavePiece.ts';
import { weavePlan } from '../../tests/virtual-weaver/weavePlan.ts';

const areasSchema = z.object({
  chart: z.object({ pitch_mm: z.number(), pass_mm: z.number() }),
  areas: z.array(
    z.object({ drawn_mm2: z.number(), woven_mm2: z.number(), middles_mm2: z.number(), boundary_rows: z.number() }),
  ),
});

const pieces = Number(process.argv[2] ?? 2_000);
const first = Number(process.argv[3] ?? 0);
const begun = performance.now();
const families = new Map<string, { pieces: number; blocks: number; passes: number; trouble: number }>();
const faults = new Map(Object.keys(allFaults).map((name) => [name, { put: 0, refused: 0, differed: 0, missed: 0 }]));
const totals = { refusals: 0, mismatches: 0, blocks: 0, passes: 0, cells: 0, largest: '', largestCells: 0 };
/** Shapes woven more than 1 % and a cell for each row with an edge off the area drawn, and why. */
const shapes = { shown: 0, out: 0, outByStepping: 0 };

for (let seed = first; seed < first + pieces; seed += 1) {
  const piece = generatedPiece(seed);
  const result = weavePiece(piece);
  const family = families.get(familyOf(seed)) ?? { pieces: 0, blocks: 0, passes: 0, trouble: 0 };
  families.set(familyOf(seed), {
    pieces: family.pieces + 1,
    blocks: family.blocks + result.blocks,
    passes: family.passes + result.passes,
    trouble: family.trouble + (result.trouble === null ? 0 : 1),
  });
  totals.blocks += result.blocks;
  totals.passes += result.passes;
  totals.cells += result.cells;
  if (result.cells > totals.largestCells) {
    totals.largestCells = result.cells;
    totals.largest = `${piece.warp.ends} ends × ${Math.round(piece.cloth.height / piece.cloth.passHeight)} passes`;
  }
  if (result.trouble !== null) {
    totals[result.refused ? 'refusals' : 'mismatches'] += 1;
    console.log(`seed ${seed}, ${familyOf(seed)}: ${result.trouble}`);
    continue;
  }
  const { chart, areas } = areasSchema.parse(result.document);
  for (const { drawn_mm2, woven_mm2, middles_mm2, boundary_rows } of areas) {
    if (drawn_mm2 === 0 && woven_mm2 === 0) continue;
    // The document's figures are rounded to a ten-thousandth.
    const allowed = Math.max(0.01 * drawn_mm2, boundary_rows * chart.pitch_mm * chart.pass_mm) + 1e-3;
    shapes.shown += 1;
    if (Math.abs(woven_mm2 - drawn_mm2) <= allowed) continue;
    shapes.out += 1;
    if (Math.abs(middles_mm2 - drawn_mm2) <= allowed) shapes.outByStepping += 1;
  }
  // Faults are tried on one piece in ten: each is a whole piece woven again.
  if (seed % 10 !== Math.floor(seed / 10) % 10) continue;
  const plan = weaverPlanSchema.parse(result.document);
  for (const [name, fault] of Object.entries(allFaults)) {
    const wrong = fault(plan);
    const count = faults.get(name);
    if (wrong === null || count === undefined) continue;
    const report = weavePlan(wrong);
    count.put += 1;
    if (report.refusal !== null) count.refused += 1;
    else if (report.mismatches.length > 0) count.differed += 1;
    else count.missed += 1;
  }
}

console.table(Object.fromEntries(families));
console.table(Object.fromEntries(faults));
console.log(
  `${pieces} pieces from seed ${first}: ${totals.refusals} refusals, ${totals.mismatches} mismatches; ` +
    `${totals.blocks} blocks, ${totals.passes} passes, ${totals.cells} cells; largest ${totals.largest}; ` +
    `${((performance.now() - begun) / 1000).toFixed(0)} s`,
);
console.log(
  `${shapes.shown} shapes show; ${shapes.out} are more than 1 % and a cell a row off the area drawn, all but ` +
    `${shapes.outByStepping} because whole passes and ends come no nearer`,
);
process.exitCode = totals.refusals + totals.mismatches + shapes.outByStepping === 0 ? 0 : 1;
