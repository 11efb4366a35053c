import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { readPiece } from '../../src/main/store/readPiece.ts';
import { lanternFolder, projectRoot } from './pieces.ts';

export interface RivalResult {
  readonly saves: number;
  readonly turnedAway: number;
  readonly wrong: readonly string[];
}

interface Told {
  readonly saves: number;
  readonly turnedAway: number;
  readonly conflicts: number;
  readonly saved: readonly number[];
}

/** Two programs write one piece for so many seconds; then everything either was answered for must be in it. */
export async function rivals(bundle: string, home: string, seconds: number): Promise<RivalResult> {
  const folder = join(home, 'piece');
  await lanternFolder(folder);
  const run = (name: string) =>
    new Promise<Told>((resolve, reject) => {
      const child = spawn(process.execPath, [bundle, folder, name, String(seconds)], {
        stdio: ['ignore', 'pipe', 'inherit'],
        env: { ...process.env, PLUMBWEFT_PROJECT: projectRoot },
      });
      let text = '';
      child.stdout.on('data', (data) => {
        text += String(data);
      });
      child.on('close', (code) =>
        code === 0 ? resolve(JSON.parse(text) as Told) : reject(new Error(`ended ${code}`)),
      );
    });
  const [left, right] = await Promise.all([run('left'), run('right')]);
  const wrong: string[] = [];
  const piece = await readPiece(realStorePorts(), folder);
  if (!piece.ok) return { saves: 0, turnedAway: 0, wrong: [piece.problem.tag] };
  const notes = new Set(piece.value.piece.notes.map(({ id }) => id));
  for (const [name, told] of [
    ['left', left],
    ['right', right],
  ] as const) {
    for (let count = 0; count < told.saves; count++)
      if (!notes.has(`${name}-${count}`)) wrong.push(`${name}-${count} is lost`);
    if (told.conflicts > 0) wrong.push(`${name} had ${told.conflicts} saves refused while it held the lock`);
  }
  const revisions = [...left.saved, ...right.saved];
  if (new Set(revisions).size !== revisions.length) wrong.push('two saves got the same revision');
  if (piece.value.revision !== revisions.length + 1)
    wrong.push(`revision ${piece.value.revision} after ${revisions.length} saves`);
  return { saves: revisions.length, turnedAway: left.turnedAway + right.turnedAway, wrong };
}
