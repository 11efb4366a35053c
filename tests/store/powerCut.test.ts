import { describe, expect, test } from 'vitest';
import { createPiece } from '../../src/main/store/createPiece.ts';
import type { StorePorts } from '../../src/main/store/storePorts.ts';
import { lantern } from '../support/pieces.ts';
import { type Carelessness, simulatedDisk } from '../support/simulatedDisk.ts';
import { nothingAcknowledged, openForTest, storeStep, whatIsWrong } from '../support/storeScript.ts';

function portsOver(disk: { readonly files: StorePorts['files'] }): StorePorts {
  let count = 0;
  return {
    files: disk.files,
    now: () => new Date(Date.UTC(2026, 10, 25, 9)),
    token: () => `t${(count++).toString(36).padStart(6, '0')}`,
  };
}

/** Cuts the power at every change of `steps` store calls and looks at every disk that may be left. */
async function cutEverywhere(steps: number, careless: Carelessness, most = 64) {
  const disk = simulatedDisk(undefined, careless);
  const ports = portsOver(disk);
  await createPiece(ports, '/piece', lantern());
  const opened = await openForTest(ports, '/piece');
  await disk.files.flushFolder('/piece');
  const acknowledged = nothingAcknowledged();
  const wrong: string[] = [];
  let states = 0;
  for (let step = 0; step < steps; step++) {
    // The disks are collected while the step runs, and looked at after it: looking takes time the step must not see.
    const left: StorePorts['files'][] = [];
    disk.onChange = () => left.push(...disk.afterPowerCut(most));
    const before = structuredClone(acknowledged);
    const done = await storeStep(ports, opened, step, acknowledged);
    disk.onChange = () => undefined;
    if (done !== 'done') throw new Error(`step ${step} was refused`);
    for (const files of left) {
      states++;
      wrong.push(...(await whatIsWrong(portsOver({ files }), '/piece', before, step)));
    }
    // After the answer nothing of the step may be lost.
    for (const files of disk.afterPowerCut(most)) {
      states++;
      wrong.push(...(await whatIsWrong(portsOver({ files }), '/piece', acknowledged, -1)));
    }
  }
  return { states, wrong };
}

describe('a power cut at any moment', () => {
  test('leaves the old or the new state whole, and nothing that was answered for is lost', async () => {
    const { states, wrong } = await cutEverywhere(16, {});
    expect(wrong).toEqual([]);
    expect(states).toBeGreaterThan(500);
    console.log(`power cut: ${states} disks looked at, ${wrong.length} wrong`);
  });

  test('would be seen to spoil files if they were not flushed before the rename', async () => {
    const { wrong } = await cutEverywhere(4, { noFileFlush: true });
    expect(wrong.join('\n')).toMatch(/does not open|photo/);
  });

  test('would be seen to lose answers if folders were not flushed after the rename', async () => {
    const { wrong } = await cutEverywhere(4, { noFolderFlush: true });
    expect(wrong.length).toBeGreaterThan(0);
  });
});
