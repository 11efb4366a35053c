import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bundleForNode } from '../support/bundleForNode.ts';
import { killKinds, killRounds, seeded } from '../support/killRounds.ts';
import { projectRoot } from '../support/pieces.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

// A handful of what `npm run kills` does a thousand times.
test('a program killed at any moment leaves the old or the new state whole', async () => {
  const bundle = await bundleForNode(join(projectRoot, 'tests/support/killChild.ts'));
  const home = temporaryFolder();
  let kills = 0;
  for (const [index, kind] of killKinds.entries()) {
    const tally = await killRounds(bundle, join(home, kind), kind, 6, seeded(index));
    kills += tally.kills;
    expect({ kind, wrong: tally.wrong }).toEqual({ kind, wrong: [] });
  }
  rmSync(join(bundle, '..'), { recursive: true, force: true });
  expect(kills).toBeGreaterThan(8);
}, 170_000);
