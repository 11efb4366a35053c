/**
 * Feeds what reads from outside with inputs changed at random; a crash, a hang, a wrong answer or a write outside the
 * piece is a finding, kept under tests/fixtures/findings and run again by the tests.
 *   npm run -s fuzz [-- --inputs 200000] [--seed 1] [--only NAME] [--side-by-side 2]
 */
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../tests/support/bundleForNode.ts';
import { fuzzTargets } from '../../tests/support/fuzz/targets.ts';
import { projectRoot } from '../../tests/support/pieces.ts';

const { values } = parseArgs({
  options: {
    inputs: { type: 'string', default: '200000' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
    'side-by-side': { type: 'string', default: '2' },
  },
});
/** The child speaks every hundred inputs, and itself calls one that takes over five seconds a finding. */
const HANG_MS = 20_000;
const LIMIT_MB = 1_500;
const bundle = await bundleForNode(join(projectRoot, 'tests/support/fuzz/fuzzChild.ts'));
const begun = performance.now();

interface Told {
  inputs?: number;
  findings?: string[];
  slowestMs?: number;
  peakMb?: number;
  at?: number;
}

/** Runs the child; answers what it told, and where it stopped when it crashed or hung. */
function child(args: readonly string[]): Promise<{ told: Told | null; at: number; trouble: string | null }> {
  return new Promise((resolve) => {
    const running = spawn(process.execPath, [bundle, ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, PLUMBWEFT_PROJECT: projectRoot },
    });
    let rest = '';
    let at = -1;
    let told: Told | null = null;
    let said = '';
    let trouble: string | null = null;
    const hang = () => {
      trouble = `no answer for ${HANG_MS / 1000} s`;
      running.kill('SIGKILL');
    };
    let timer = setTimeout(hang, HANG_MS * 2);
    running.stdout.on('data', (data) => {
      clearTimeout(timer);
      timer = setTimeout(hang, HANG_MS);
      const lines = (rest + String(data)).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) {
        // Some decoders print by themselves.
        if (!line.startsWith('{')) continue;
        const message = JSON.parse(line) as Told;
        if (message.at !== undefined) at = message.at;
        else told = message;
      }
    });
    running.stderr.on('data', (data) => {
      said = (said + String(data)).slice(-2_000);
    });
    running.on('close', (code, signal) => {
      clearTimeout(timer);
      if (told === null)
        trouble ??= `ended with ${code ?? signal}: ${said.split('\n').filter(Boolean).slice(0, 6).join(' | ')}`;
      resolve({ told, at, trouble });
    });
  });
}

const targets = [
  ...(await fuzzTargets()).map(({ name, share }) => ({ name, share })),
  { name: 'call', share: 10_000 },
  { name: 'request', share: 10_000 },
];
const whole = targets.reduce((sum, { share }) => sum + share, 0);
let inputs = 0;
let findings = 0;
let slowest = 0;
let peak = 0;

async function fuzzOne(name: string, share: number): Promise<void> {
  const goal = Math.ceil((Number(values.inputs) * share) / whole);
  const found: string[] = [];
  let from = 0;
  let own = 0;
  let most = 0;
  while (from < goal) {
    const { told, at, trouble } = await child([name, values.seed, String(from), String(goal)]);
    if (told !== null) {
      found.push(...(told.findings ?? []));
      own = Math.max(own, told.slowestMs ?? 0);
      most = Math.max(most, told.peakMb ?? 0);
      break;
    }
    // Find the very input, keep it, and go on behind it.
    const exact = await child([
      name,
      values.seed,
      String(Math.max(at, from)),
      String(Math.min(goal, at + 100)),
      'each',
    ]);
    const index = exact.trouble === null ? at : exact.at;
    await child([name, values.seed, String(index), String(index + 1), 'keep']);
    found.push(`${name} #${index}: ${trouble}`);
    from = index + 1;
  }
  inputs += goal;
  findings += found.length;
  slowest = Math.max(slowest, own);
  peak = Math.max(peak, most);
  console.log(`${name.padEnd(22)} ${goal} inputs, ${found.length} findings, slowest ${own.toFixed(0)} ms, ${most} MB`);
  for (const words of found.slice(0, 8)) console.log(`  ${words.slice(0, 300)}`);
}

const chosen = targets.filter(({ name }) => values.only === undefined || name === values.only);
// A few at a time, the longest first.
const waiting = [...chosen].sort((a, b) => b.share - a.share);
await Promise.all(
  Array.from({ length: Number(values['side-by-side']) }, async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await fuzzOne(next.name, next.share);
  }),
);
rmSync(join(bundle, '..'), { recursive: true, force: true });
console.log(
  `${inputs} inputs in ${((performance.now() - begun) / 1000).toFixed(0)} s: ${findings} findings, slowest ${slowest.toFixed(0)} ms, largest process ${peak} of ${LIMIT_MB} MB`,
);
process.exitCode = findings === 0 && peak < LIMIT_MB ? 0 : 1;
