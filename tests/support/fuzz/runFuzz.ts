import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seeded } from '../killRounds.ts';
import { projectRoot } from '../pieces.ts';
import type { Pick } from './mutate.ts';
import type { FuzzTarget } from './targets.ts';

/** Inputs that once did harm; each is run again by the tests for ever. */
export const findingsFolder = join(projectRoot, 'tests/fixtures/findings');
export const SLOW_MS = 5_000;

/** Every input has a source of chance of its own, so that any one can be made again. */
const pickFor = (seed: number, index: number): Pick => {
  const random = seeded(seed * 1_000_003 + index);
  return (below) => Math.floor(random() * below);
};

export interface FuzzResult {
  readonly inputs: number;
  readonly findings: readonly string[];
  readonly slowestMs: number;
}

/** Runs inputs `from` to `to` of one target; what does harm is kept as a file. */
export async function runFuzz(
  target: FuzzTarget,
  seed: number,
  from: number,
  to: number,
  onInput: (index: number) => void = () => undefined,
): Promise<FuzzResult> {
  const findings: string[] = [];
  let slowestMs = 0;
  for (let index = from; index < to; index++) {
    onInput(index);
    const input = target.make(pickFor(seed, index));
    const begun = performance.now();
    let wrong: string | null;
    try {
      wrong = await target.run(input);
    } catch (thrown) {
      wrong = `threw ${thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown)}`;
    }
    const took = performance.now() - begun;
    slowestMs = Math.max(slowestMs, took);
    if (took > SLOW_MS) wrong ??= `took ${Math.round(took)} ms`;
    if (wrong !== null) {
      findings.push(`${target.name} #${index}: ${wrong}`);
      keepFinding(target.name, input);
    }
  }
  return { inputs: to - from, findings, slowestMs };
}

export function keepFinding(target: string, input: Uint8Array): void {
  mkdirSync(findingsFolder, { recursive: true });
  const name = createHash('sha256').update(input).digest('hex').slice(0, 12);
  writeFileSync(join(findingsFolder, `${target.replaceAll(' ', '-')}.${name}.bin`), input);
}

export const makeInput = (target: FuzzTarget, seed: number, index: number): Uint8Array =>
  target.make(pickFor(seed, index));
