import { join } from 'node:path';
import { z } from 'zod';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { PART_ENDING } from '../files/writeWhole.ts';
import { layout } from './layout.ts';
import type { StorePorts } from './storePorts.ts';
import { type LockOwner, ownerState } from './thisProcess.ts';

const lockNote = z.object({
  token: z.string(),
  machine: z.string(),
  boot: z.string(),
  pid: z.number().int().positive(),
  began: z.string(),
  shell: z.string(),
});

/** How long another machine's lock may go without a beat before it counts as left behind. */
export const LEFT_BEHIND_MS = 10 * 60_000;
/** A lock that can't be read is being written by somebody, unless it is older than this. */
const UNREADABLE_MS = 10_000;

export type LockTag = 'open-elsewhere' | 'lock-left-behind' | FileTag;

/** The right to write into one piece folder. */
export interface PieceLock {
  /** False once somebody took it over, for example after this computer slept through its beats. */
  stillOurs(): Promise<boolean>;
  beat(): Promise<void>;
  release(): Promise<void>;
}

type Found =
  | { readonly state: 'free' }
  | { readonly state: 'held'; readonly by: string }
  | { readonly state: 'left-behind'; readonly by: string; readonly minutes: number; readonly token: string }
  | { readonly state: 'dead'; readonly token: string };

async function readNote(ports: StorePorts, folder: string): Promise<z.infer<typeof lockNote> | null> {
  try {
    const bytes = await ports.files.read(layout.lock(folder), 10_000);
    const parsed = lockNote.safeParse(JSON.parse(new TextDecoder().decode(bytes)));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** Now, by the clock of the disk the folder is on: another machine's beats are marked by that clock. */
async function diskNow(ports: StorePorts, folder: string): Promise<number> {
  const probe = join(folder, `.clock.${ports.token()}${PART_ENDING}`);
  await (await ports.files.create(probe)).close();
  const stat = await ports.files.stat(probe);
  await ports.files.remove(probe);
  return stat?.modifiedMs ?? ports.now().getTime();
}

/** Who holds the lock, without touching it. */
async function lookAtLock(ports: StorePorts, folder: string): Promise<Found> {
  const stat = await ports.files.stat(layout.lock(folder));
  if (stat === null) return { state: 'free' };
  const note = await readNote(ports, folder);
  if (note === null) {
    const age = (await diskNow(ports, folder)) - stat.modifiedMs;
    return age > UNREADABLE_MS ? { state: 'dead', token: 'unreadable' } : { state: 'held', by: 'another Plumbweft' };
  }
  switch (ownerState(note)) {
    case 'running':
      return { state: 'held', by: `another Plumbweft on this computer (${note.shell})` };
    case 'gone':
      return { state: 'dead', token: note.token };
    case 'elsewhere': {
      const age = (await diskNow(ports, folder)) - stat.modifiedMs;
      return age > LEFT_BEHIND_MS
        ? { state: 'left-behind', by: note.machine, minutes: Math.round(age / 60_000), token: note.token }
        : { state: 'held', by: `Plumbweft on ${note.machine}` };
    }
  }
}

/**
 * Removes a dead lock. Only one program may remove a given lock: the one that makes the folder named after its token.
 * Another that saw the same dead lock loses that race and looks again.
 */
async function removeDead(ports: StorePorts, folder: string, token: string): Promise<void> {
  const claim = join(folder, `.unlock.${token.replace(/[^a-z0-9]/gi, '')}`);
  try {
    await ports.files.makeFolder(claim);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code !== 'EEXIST') throw thrown;
    const stat = await ports.files.stat(claim);
    // Its maker stopped half-way: let the claim go, so that the next look can make it again.
    if (stat !== null && (await diskNow(ports, folder)) - stat.modifiedMs > UNREADABLE_MS) {
      await ports.files.removeFolder(claim).catch(() => undefined);
    }
    return;
  }
  const note = await readNote(ports, folder);
  if ((note?.token ?? 'unreadable') === token) await ports.files.remove(layout.lock(folder)).catch(() => undefined);
  await ports.files.removeFolder(claim).catch(() => undefined);
}

/** Makes the lock file appear with its words already in it; where a disk has no links, in two steps. */
async function place(ports: StorePorts, folder: string, token: string, owner: LockOwner): Promise<boolean> {
  const words = new TextEncoder().encode(`${JSON.stringify({ token, ...owner })}\n`);
  const temporary = join(folder, `.lock.${token}${PART_ENDING}`);
  const file = await ports.files.create(temporary);
  try {
    await file.write(words);
  } finally {
    await file.close();
  }
  try {
    await ports.files.link(temporary, layout.lock(folder));
    return true;
  } catch (thrown) {
    const code = (thrown as NodeJS.ErrnoException).code;
    if (code === 'EEXIST') return false;
    if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'ENOSYS' && code !== 'EOPNOTSUPP') throw thrown;
  } finally {
    await ports.files.remove(temporary).catch(() => undefined);
  }
  try {
    const plain = await ports.files.create(layout.lock(folder));
    await plain.write(words);
    await plain.close();
    return true;
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw thrown;
  }
}

/**
 * Takes the lock of a piece folder.
 * @param takeOver also takes a lock another machine has left behind; never one whose owner is known to be running.
 */
export async function takeLock(
  ports: StorePorts,
  folder: string,
  owner: LockOwner,
  takeOver: boolean,
): Promise<Outcome<PieceLock, LockTag>> {
  const token = ports.token();
  try {
    for (let attempt = 0; attempt < 20; attempt++) {
      const found = await lookAtLock(ports, folder);
      if (found.state === 'held') {
        return failure(
          'open-elsewhere',
          `This piece is open in ${found.by}, so it can be looked at here but not changed.`,
          'Close it there and open it again.',
        );
      }
      if (found.state === 'left-behind' && !takeOver) {
        return failure(
          'lock-left-behind',
          `This piece was left open on ${found.by}, last heard of ${found.minutes} minutes ago, so it can be looked at but not changed.`,
          'If it is closed there, take it over here, or run "plumbweft verify --mend".',
        );
      }
      if (found.state !== 'free') {
        await removeDead(ports, folder, found.token);
        continue;
      }
      if (await place(ports, folder, token, owner)) return success(lockHandle(ports, folder, token));
    }
  } catch (thrown) {
    return fileProblem(thrown, 'opening the piece');
  }
  return failure('open-elsewhere', 'Another Plumbweft keeps taking this piece.', 'Close it there and open it again.');
}

function lockHandle(ports: StorePorts, folder: string, token: string): PieceLock {
  const stillOurs = async () => (await readNote(ports, folder))?.token === token;
  return {
    stillOurs,
    async beat() {
      if (await stillOurs()) await ports.files.touch(layout.lock(folder), ports.now());
    },
    async release() {
      if (await stillOurs()) await ports.files.remove(layout.lock(folder)).catch(() => undefined);
    },
  };
}
