/**
 * Two shells write one piece for a minute: nothing may be lost, and whoever comes second is told.
 *   npm run -s rivals [-- --seconds 60]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../tests/support/bundleForNode.ts';
import { projectRoot } from '../../tests/support/pieces.ts';
import { rivals } from '../../tests/support/rivals.ts';

const { values } = parseArgs({ options: { seconds: { type: 'string', default: '60' } } });
const home = mkdtempSync(join(tmpdir(), 'plumbweft-rivals-'));
const bundle = await bundleForNode(join(projectRoot, 'tests/support/rivalChild.ts'));
const result = await rivals(bundle, home, Number(values.seconds));
rmSync(home, { recursive: true, force: true });
rmSync(join(bundle, '..'), { recursive: true, force: true });
for (const words of result.wrong.slice(0, 20)) console.log(words);
console.log(
  `${values.seconds} s, two programs: ${result.saves} saves, the second told ${result.turnedAway} times, ${result.wrong.length} lost or wrong`,
);
process.exitCode = result.wrong.length === 0 && result.turnedAway > 0 ? 0 : 1;
