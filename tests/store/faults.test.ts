import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { FileLayer } from '../../src/main/files/fileLayer.ts';
import { nodeFiles } from '../../src/main/files/nodeFiles.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { failingFiles, fullFiles } from '../support/faultyFiles.ts';
import { lanternFolder } from '../support/pieces.ts';
import { nothingAcknowledged, openForTest, storeStep, whatIsWrong } from '../support/storeScript.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

/** Runs the first `steps` steps, the last one over `spoil`ed files, then looks at the disk with good ones. */
async function lastStepOver(folder: string, steps: number, spoil: (files: FileLayer) => FileLayer) {
  const good = realStorePorts();
  const opened = await openForTest(good, folder);
  const acknowledged = nothingAcknowledged();
  for (let step = 0; step < steps; step++) await storeStep(good, opened, step, acknowledged);
  const outcome = await storeStep({ ...good, files: spoil(nodeFiles) }, opened, steps, acknowledged);
  const wrong = await whatIsWrong(good, folder, acknowledged, steps);
  // The same step again, on a disk that works, must go through.
  const again = await storeStep(good, opened, steps, acknowledged);
  wrong.push(...(await whatIsWrong(good, folder, acknowledged, -1)));
  await opened.handle.lock?.release();
  return { outcome, wrong, again };
}

const kinds = [
  ['saving the piece', 0],
  ['saving the place', 1],
  ['keeping a check', 2],
  ['changing a check', 3],
  ['throwing a check away', 7],
] as const;

describe.each(kinds)('%s', (_what, step) => {
  test('with each call failing in turn, once or for good, leaves old or new and goes through afterwards', async () => {
    const root = temporaryFolder();
    await lanternFolder(join(root, 'template'));
    const count = async () => {
      const folder = join(root, 'count');
      cpSync(join(root, 'template'), folder, { recursive: true });
      const files = failingFiles(nodeFiles, null);
      await lastStepOver(folder, step, () => files);
      return files.calls.length;
    };
    const calls = await count();
    expect(calls).toBeGreaterThan(1);
    let refused = 0;
    for (let at = 0; at < calls; at++) {
      for (const andAfter of [false, true]) {
        for (const code of andAfter ? ['EACCES'] : ['EIO']) {
          const folder = join(root, `${at}-${andAfter}-${code}`);
          cpSync(join(root, 'template'), folder, { recursive: true });
          const { outcome, wrong, again } = await lastStepOver(folder, step, (files) =>
            failingFiles(files, { at, code, andAfter }),
          );
          if (outcome === 'refused') refused++;
          expect({ at, andAfter, code, wrong }).toEqual({ at, andAfter, code, wrong: [] });
          expect({ at, code, again }).toEqual({ at, code, again: 'done' });
        }
      }
    }
    expect(refused).toBeGreaterThan(calls);
  });

  test('on a disk that fills up at any byte leaves what was there', async () => {
    const root = temporaryFolder();
    await lanternFolder(join(root, 'template'));
    for (const room of [0, 1, 100, 1_000, 2_900, 3_500, 5_000, 7_000]) {
      const folder = join(root, `${room}`);
      cpSync(join(root, 'template'), folder, { recursive: true });
      const { wrong } = await lastStepOver(folder, step, (files) => fullFiles(files, room));
      expect({ room, wrong }).toEqual({ room, wrong: [] });
    }
  });
});
