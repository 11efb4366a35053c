/**
 * A program to be killed: it does one kind of writing without end and says after each what was answered for. What it
 * says is written at once, so that nothing said is lost with it.
 */
import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { importPiece } from '../../src/main/exchange/importPiece.ts';
import { openZipSource } from '../../src/main/exchange/zipSource.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { saveProgress } from '../../src/main/store/savePiece.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';
import { verifyPiece } from '../../src/main/store/verifyPiece.ts';
import { type Acknowledged, storeStep } from './storeScript.ts';

const [kind, folder, given] = process.argv.slice(2) as [string, string, string];
const ports = realStorePorts();
const owner = thisProcess('killed');
const tell = (message: object) => writeSync(1, `${JSON.stringify(message)}\n`);

async function work(): Promise<void> {
  switch (kind) {
    case 'store': {
      const before = JSON.parse(given) as { step: number; revision: number; passes: number; checks: [string, never][] };
      const acknowledged: Acknowledged = {
        revision: before.revision,
        passes: before.passes,
        checks: new Map(before.checks),
        discarded: new Set(),
      };
      const opened = await openPieceFolder(ports, folder, owner);
      if (!opened.ok || opened.value.readOnly !== null) {
        tell({ wrong: opened.ok ? opened.value.readOnly : opened.problem.tag });
        return;
      }
      for (let step = before.step; ; step++) {
        tell({ step });
        if ((await storeStep(ports, opened.value, step, acknowledged)) !== 'done') {
          tell({ wrong: `step ${step} was refused` });
          return;
        }
        const { revision, passes, checks } = acknowledged;
        tell({ done: step, revision, passes, checks: [...checks] });
      }
    }
    case 'import': {
      for (let count = 0; ; count++) {
        const source = await openZipSource(given);
        if (!source.ok) throw new Error(source.problem.tag);
        tell({ step: count });
        const brought = await importPiece(ports, source.value, join(folder, `in-${process.pid}-${count}`));
        tell(brought.ok ? { done: `in-${process.pid}-${count}` } : { wrong: brought.problem.tag });
      }
    }
    case 'mend': {
      tell({ step: 0 });
      const mended = await verifyPiece(ports, folder, owner, true);
      tell(mended.ok ? { done: 0 } : { wrong: mended.problem.tag });
      return;
    }
    default: {
      const opened = await openPieceFolder(ports, folder, owner);
      if (!opened.ok || opened.value.readOnly !== null) {
        tell({ wrong: 'not opened' });
        return;
      }
      tell({ step: 0 });
      const progress = { passesDone: 21, planFingerprint: 'f', finished: [], at: '2026-11-25T09:00:00.000Z' };
      const saved = await saveProgress(ports, opened.value.handle, progress);
      tell(saved.ok ? { done: 0 } : { wrong: saved.problem.tag });
      await opened.value.handle.lock?.release();
    }
  }
}

await work();
