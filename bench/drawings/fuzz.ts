import { importDrawing } from '../../src/core/cartoon/svg/importDrawing.ts';
import { hostileDrawing } from '../../tests/cartoon/hostileDrawings.ts';

/**
 * Reads many seeded hostile drawings: `npx tsx bench/drawings/fuzz.ts [documents, 100000] [first seed, 0]`.
 * Exits 1 when one is not answered with a drawing or a problem, or takes longer than a second.
 */
const documents = Number(process.argv[2] ?? 100_000);
const first = Number(process.argv[3] ?? 0);
const into = {
  box: { left: -100, right: 100, bottom: 0, top: 200 },
  yarns: [
    { id: 'ink', colour: '#2b3150' },
    { id: 'gold', colour: '#c9952e' },
  ],
  idPrefix: 'd',
  areaName: 'Area',
  smallest: 1,
};

const seen = new Map<string, number>();
let slowest = 0;
let bad = 0;
const start = performance.now();
for (let seed = first; seed < first + documents; seed++) {
  const text = hostileDrawing(seed);
  const before = performance.now();
  try {
    const outcome = importDrawing(text, into);
    const tag = outcome.ok ? 'read' : outcome.problem.tag;
    seen.set(tag, (seen.get(tag) ?? 0) + 1);
    const numbers = outcome.ok
      ? outcome.value.shapes.flatMap((shape) =>
          shape.form.kind === 'path' ? shape.form.commands.flatMap((command) => Object.values(command)) : [Number.NaN],
        )
      : [];
    if (numbers.some((value) => typeof value === 'number' && !(Math.abs(value) <= 1e6))) {
      bad++;
      console.log(`seed ${seed}: a shape with a size that makes no sense`);
    }
  } catch (thrown) {
    bad++;
    console.log(`seed ${seed}: ${thrown instanceof Error ? thrown.stack : String(thrown)}`);
  }
  const took = performance.now() - before;
  if (took > 1_000) {
    bad++;
    console.log(`seed ${seed}: took ${took.toFixed(0)} ms`);
  }
  slowest = Math.max(slowest, took);
}
const seconds = (performance.now() - start) / 1000;
console.log(`${documents} drawings from seed ${first} in ${seconds.toFixed(1)} s; slowest ${slowest.toFixed(0)} ms`);
for (const [tag, count] of [...seen].sort()) console.log(`  ${tag}: ${count}`);
console.log(bad === 0 ? 'no crash, no hang' : `${bad} bad`);
process.exitCode = bad === 0 ? 0 : 1;
