/** Fuzzes one target in a process of its own, so that a crash or a hang there is seen from outside. */
import { writeSync } from 'node:fs';
import { keepFinding, makeInput, runFuzz } from './runFuzz.ts';
import { callTarget, requestTarget } from './shellTargets.ts';
import { fuzzTargets } from './targets.ts';

const [name, seed, from, to, mode] = process.argv.slice(2) as [string, string, string, string, string?];
const target =
  name === 'call'
    ? await callTarget()
    : name === 'request'
      ? await requestTarget()
      : (await fuzzTargets()).find((one) => one.name === name);
if (target === undefined) throw new Error(`no target ${name}`);
const tell = (message: object) => writeSync(1, `${JSON.stringify(message)}\n`);

if (mode === 'keep') {
  keepFinding(name, makeInput(target, Number(seed), Number(from)));
  process.exit(0);
}
const every = mode === 'each' ? 1 : 100;
let peak = 0;
const result = await runFuzz(target, Number(seed), Number(from), Number(to), (index) => {
  if (index % every === 0) {
    peak = Math.max(peak, process.memoryUsage().rss);
    tell({ at: index });
  }
});
tell({ ...result, peakMb: Math.round(Math.max(peak, process.memoryUsage().rss) / 1e6) });
process.exit(0);
