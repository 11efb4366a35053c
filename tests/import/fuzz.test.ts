import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findingsFolder, runFuzz } from '../support/fuzz/runFuzz.ts';
import { callTarget, requestTarget } from '../support/fuzz/shellTargets.ts';
import { type FuzzTarget, fuzzTargets } from '../support/fuzz/targets.ts';

/** One input here for every sixty of `npm run fuzz`. */
const SHARE = 60;

describe('inputs changed at random', () => {
  let targets: readonly FuzzTarget[] = [];
  // The decoders print what they think of a broken picture.
  const log = console.log;
  beforeAll(async () => {
    console.log = () => undefined;
    targets = [...(await fuzzTargets()), await callTarget(), await requestTarget()];
  });
  afterAll(() => {
    console.log = log;
  });

  test('do no harm', async () => {
    const findings: string[] = [];
    let inputs = 0;
    for (const target of targets) {
      const result = await runFuzz(target, 7, 0, Math.ceil(target.share / SHARE));
      inputs += result.inputs;
      findings.push(...result.findings);
    }
    expect(findings).toEqual([]);
    expect(inputs).toBeGreaterThan(3_000);
  }, 170_000);

  test('that once did harm do none any more', async () => {
    const files = existsSync(findingsFolder) ? readdirSync(findingsFolder).filter((name) => name.endsWith('.bin')) : [];
    for (const file of files) {
      const target = targets.find(({ name }) => name.replaceAll(' ', '-') === file.split('.')[0]);
      expect({ file, known: target !== undefined }).toEqual({ file, known: true });
      const wrong = await target!.run(new Uint8Array(readFileSync(join(findingsFolder, file))));
      expect({ file, wrong }).toEqual({ file, wrong: null });
    }
  });
});
