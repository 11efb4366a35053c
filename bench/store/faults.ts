/**
 * Makes every kind of writing fail at every place: each call in turn, the disk filling up, and the power going, with
 * every subset of what was not flushed lost. Then once more on a real small disk, filled up and made read-only, where
 * this computer lets one be mounted.
 *   npm run -s faults [-- --bytes 97] [--most 4096]
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { cutPower, type FaultTally, failEveryCall, fillDisk } from '../../tests/support/faultRounds.ts';
import { type Scenario, scenarios } from '../../tests/support/faultScenarios.ts';

const { values } = parseArgs({
  options: {
    /** The disk fills up at every so-many-th byte. */
    bytes: { type: 'string', default: '97' },
    /** Disks looked at for each moment at which the power may go. */
    most: { type: 'string', default: '4096' },
  },
});
const begun = performance.now();
const whole: FaultTally = { tries: 0, refused: 0, wrong: [] };
function add(tally: FaultTally): string {
  whole.tries += tally.tries;
  whole.wrong.push(...tally.wrong);
  for (const words of tally.wrong.slice(0, 5)) console.log(`  ${words}`);
  return `${tally.tries} (${tally.wrong.length} wrong)`;
}

for (const scenario of scenarios) {
  const calls = add(await failEveryCall(scenario));
  const full = add(await fillDisk(scenario, Number(values.bytes)));
  const power = add(await cutPower(scenario, Number(values.most)));
  console.log(`${scenario.name.padEnd(22)} calls failed ${calls}, disks filled ${full}, power cuts ${power}`);
}

const mounted = mkdtempSync(join(tmpdir(), 'plumbweft-faults-'));
const mount = (...args: readonly string[]) => spawnSync('mount', args, { stdio: 'ignore' }).status === 0;

/** A disk of a megabyte with so many bytes left on it, and then one that can't be written at all. */
async function onRealDisk(scenario: Scenario): Promise<FaultTally> {
  const tally: FaultTally = { tries: 0, refused: 0, wrong: [] };
  const ports = realStorePorts();
  const ballast = join(mounted, 'ballast');
  for (const pages of ['read-only', 0, 1, 2, 3, 4, 5, 6, 8, 10, 14] as const) {
    mount('-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', mounted);
    const prepared = await scenario.prepare(ports, mounted);
    tally.tries++;
    if (pages === 'read-only') mount('-o', 'remount,ro', mounted);
    else {
      const { bavail, bsize } = statfsSync(mounted);
      writeFileSync(ballast, new Uint8Array(Math.max(0, (bavail - pages) * bsize)));
    }
    const outcome = await prepared.act(ports);
    if (outcome === 'refused') tally.refused++;
    if (pages === 'read-only') mount('-o', 'remount,rw', mounted);
    rmSync(ballast, { force: true });
    const wrong = await prepared.wrong(ports, outcome === 'done');
    if ((await prepared.act(ports)) !== 'done') wrong.push('asked again it does not go through');
    wrong.push(...(await prepared.wrong(ports, true)));
    tally.wrong.push(...wrong.map((words) => `${scenario.name}, ${pages} pages left: ${words}`));
    spawnSync('umount', [mounted]);
  }
  return tally;
}

if (mount('-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', mounted)) {
  spawnSync('umount', [mounted]);
  for (const scenario of scenarios) {
    const tally = await onRealDisk(scenario);
    console.log(
      `${scenario.name.padEnd(22)} on a real disk, full or read-only: ${add(tally)}, refused ${tally.refused}`,
    );
  }
} else console.log('No disk may be mounted here: full and read-only disks were played by the write layer alone.');
rmSync(mounted, { recursive: true, force: true });

const seconds = ((performance.now() - begun) / 1000).toFixed(0);
console.log(`${whole.tries} faults in ${seconds} s: ${whole.wrong.length} lost or half states`);
process.exitCode = whole.wrong.length === 0 ? 0 : 1;
