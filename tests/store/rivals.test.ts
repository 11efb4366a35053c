import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bundleForNode } from '../support/bundleForNode.ts';
import { projectRoot } from '../support/pieces.ts';
import { rivals } from '../support/rivals.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

// Three seconds of what `npm run rivals` does for a minute.
test('two programs that write one piece lose nothing, and the second is told', async () => {
  const bundle = await bundleForNode(join(projectRoot, 'tests/support/rivalChild.ts'));
  const result = await rivals(bundle, temporaryFolder(), 3);
  rmSync(join(bundle, '..'), { recursive: true, force: true });
  expect(result.wrong).toEqual([]);
  expect(result.saves).toBeGreaterThan(4);
  expect(result.turnedAway).toBeGreaterThan(0);
});
