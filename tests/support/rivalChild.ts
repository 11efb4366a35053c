/** One of two programs that want the same piece: opens it, saves a few times, closes it, and begins again. */
import { writeSync } from 'node:fs';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { savePiece } from '../../src/main/store/savePiece.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';

const [folder, name, seconds] = process.argv.slice(2) as [string, string, string];
const ports = realStorePorts();
const owner = thisProcess(name);
const until = Date.now() + Number(seconds) * 1000;
const told = { saves: 0, turnedAway: 0, conflicts: 0, saved: [] as number[] };

while (Date.now() < until) {
  const opened = await openPieceFolder(ports, folder, owner);
  if (!opened.ok) throw new Error(opened.problem.tag);
  if (opened.value.readOnly !== null) {
    told.turnedAway++;
    // The second is told why, and a save of its own writes nothing.
    const tried = await savePiece(ports, opened.value.handle, opened.value.revision, opened.value.piece);
    if (tried.ok || tried.problem.tag !== 'read-only') throw new Error('a save without the lock');
    await new Promise((later) => setTimeout(later, 3));
    continue;
  }
  let { revision, piece } = opened.value;
  for (let count = 0; count < 4; count++) {
    const note = { id: `${name}-${told.saves}`, at: ports.now().toISOString(), kind: 'note' as const, text: name };
    const next = { ...piece, notes: [...piece.notes, note].slice(-9_000) };
    const saved = await savePiece(ports, opened.value.handle, revision, next);
    if (!saved.ok) {
      told.conflicts++;
      break;
    }
    revision = saved.value;
    piece = next;
    told.saves++;
    told.saved.push(revision);
  }
  await opened.value.handle.lock?.release();
  await new Promise((later) => setTimeout(later, 1));
}
writeSync(1, JSON.stringify(told));
