/**
 * Kills a writing program at random moments and looks at what it leaves.
 *   npm run -s kills [-- --kills 1000] [--seed 1] [--side-by-side 2]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../tests/support/bundleForNode.ts';
import { type KillTally, killKinds, killRounds, seeded } from '../../tests/support/killRounds.ts';
import { projectRoot } from '../../tests/support/pieces.ts';

const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    'side-by-side': { type: 'string', default: '2' },
  },
});
const wanted = Number(values.kills);
const home = mkdtempSync(join(tmpdir(), 'plumbweft-kills-'));
const bundle = await bundleForNode(join(projectRoot, 'tests/support/killChild.ts'));
const begun = performance.now();

const lines = Number(values['side-by-side']);
const share: Record<(typeof killKinds)[number], number> = { store: 0.45, import: 0.2, mend: 0.2, migrate: 0.15 };
const line = async (index: number) => {
  const tallies: [string, KillTally][] = [];
  for (const kind of killKinds) {
    const tally: KillTally = { kills: 0, during: 0, late: 0, wrong: [] };
    const goal = Math.ceil((wanted * share[kind]) / lines);
    // A child that ended before its kill doesn't count: go on until there are enough.
    for (let part = 0; tally.kills < goal && part < 50; part++) {
      const seed = Number(values.seed) * 1_000 + index * 100 + part;
      const rounds = Math.min(60, goal - tally.kills);
      const more = await killRounds(bundle, join(home, `${index}-${kind}-${part}`), kind, rounds, seeded(seed));
      tally.kills += more.kills;
      tally.during += more.during;
      tally.late += more.late;
      tally.wrong.push(...more.wrong);
    }
    tallies.push([kind, tally]);
  }
  return tallies;
};
const all = (await Promise.all(Array.from({ length: lines }, (_, index) => line(index)))).flat();
rmSync(home, { recursive: true, force: true });
rmSync(join(bundle, '..'), { recursive: true, force: true });

let kills = 0;
let wrong = 0;
for (const kind of killKinds) {
  const of = all.filter(([name]) => name === kind).map(([, tally]) => tally);
  const sum = (pick: (tally: KillTally) => number) => of.reduce((total, tally) => total + pick(tally), 0);
  kills += sum((tally) => tally.kills);
  wrong += sum((tally) => tally.wrong.length);
  console.log(
    `${kind.padEnd(8)} ${sum((tally) => tally.kills)} kills, ${sum((tally) => tally.during)} in the middle of a write, ${sum((tally) => tally.wrong.length)} wrong`,
  );
  for (const words of of.flatMap((tally) => tally.wrong).slice(0, 10)) console.log(`  ${words}`);
}
console.log(`${kills} kills in ${((performance.now() - begun) / 1000).toFixed(0)} s: ${wrong} lost or half states`);
process.exitCode = wrong === 0 && kills >= wanted ? 0 : 1;
