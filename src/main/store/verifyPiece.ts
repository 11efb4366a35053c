import { dirname, join } from 'node:path';
import { type Outcome, success } from '../../core/model/outcome.ts';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { progressDocument } from '../../core/project/progressDocument.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256OfFile } from '../files/sha256.ts';
import { PART_ENDING, writeWhole } from '../files/writeWhole.ts';
import { checkIds, readCheck } from './checkStore.ts';
import { CHECK_NAME, layout, PHOTO_NAME, PREVIOUS_NAME } from './layout.ts';
import { type LockTag, type PieceLock, takeLock } from './pieceLock.ts';
import { ensureFolder, keepVersion, newestWholeVersion, previousRevisions } from './previousVersions.ts';
import { readDocument } from './readDocument.ts';
import { readPiece } from './readPiece.ts';
import { removeTree } from './removeTree.ts';
import type { StorePorts } from './storePorts.ts';
import type { LockOwner } from './thisProcess.ts';

/** One thing that was found. `mended` only when it was asked for and done. */
export interface Finding {
  readonly what: string;
  readonly remedy: string;
  readonly state: 'whole' | 'mendable' | 'mended' | 'beyond-mending' | 'note';
}

export interface Verified {
  readonly findings: readonly Finding[];
  readonly photos: number;
  readonly checks: number;
}

/** What is put aside, rather than thrown away, bears this in its name. */
const aside = (path: string, token: string) => `${path}.${token}.aside`;

/** Puts a file aside so that it stays there: a power cut must not bring back what was said to be mended. */
async function putAside(ports: StorePorts, path: string): Promise<void> {
  await ports.files.rename(path, aside(path, ports.token()));
  await ports.files.flushFolder(dirname(path));
}

/**
 * Looks through a piece folder file by file, each proved against its checksum; memory stays at one document.
 * @param mend also mends what can be mended. Nothing readable is ever thrown away: a file that can't be read is put
 * aside under another name.
 */
export async function verifyPiece(
  ports: StorePorts,
  folder: string,
  owner: LockOwner,
  mend: boolean,
  onStep: (words: string) => void = () => undefined,
): Promise<Outcome<Verified, LockTag | FileTag>> {
  let lock: PieceLock | null = null;
  if (mend) {
    const taken = await takeLock(ports, folder, owner, true);
    if (!taken.ok) return taken;
    lock = taken.value;
  }
  try {
    const findings: Finding[] = [];
    await lookAtPiece(ports, folder, mend, findings);
    onStep('piece.json');
    await lookAtProgress(ports, folder, mend, findings);
    const needed = await lookAtChecks(ports, folder, mend, findings, onStep);
    const photos = await lookAtPhotos(ports, folder, mend, findings, needed, onStep);
    await lookAtVersions(ports, folder, mend, findings);
    await lookAtLeftovers(ports, folder, mend, findings);
    return success({ findings, photos, checks: needed.checks });
  } catch (thrown) {
    return fileProblem(thrown, 'looking through the piece');
  } finally {
    await lock?.release();
  }
}

async function lookAtPiece(ports: StorePorts, folder: string, mend: boolean, findings: Finding[]): Promise<void> {
  const read = await readPiece(ports, folder);
  if (read.ok || read.problem.tag === 'too-new') {
    const tooNew = !read.ok || read.value.readOnly !== null;
    findings.push({
      what: tooNew ? 'piece.json was kept by a newer Plumbweft.' : 'piece.json is whole.',
      remedy: tooNew ? 'Look through it with that one.' : '',
      state: tooNew ? 'note' : 'whole',
    });
    return;
  }
  // The piece itself may be whole and only the progress not: that is looked at on its own.
  const alone = await readDocument(ports, pieceDocument, layout.piece(folder));
  if (alone.ok) {
    findings.push({ what: 'piece.json is whole.', remedy: '', state: 'whole' });
    return;
  }
  const spare = await newestWholeVersion(ports, folder);
  if (spare === null) {
    findings.push({
      what: `piece.json can't be used: ${read.problem.sentence}`,
      remedy: 'No earlier version is left beside it. Bring piece.json back from a copy of the piece.',
      state: 'beyond-mending',
    });
    return;
  }
  if (mend) {
    const path = layout.piece(folder);
    if ((await ports.files.stat(path)) !== null)
      await ports.files.link(path, aside(path, ports.token())).catch(() => undefined);
    await writeWhole(ports.files, path, [new TextEncoder().encode(spare.text)], ports.token());
  }
  findings.push({
    what: `piece.json can't be used: ${read.problem.sentence}`,
    remedy: mend
      ? `The newest kept version, number ${spare.revision}, is back in its place; the old file is beside it.`
      : `Version ${spare.revision} is kept beside it and can be brought back with --mend.`,
    state: mend ? 'mended' : 'mendable',
  });
}

async function lookAtProgress(ports: StorePorts, folder: string, mend: boolean, findings: Finding[]): Promise<void> {
  const path = layout.progress(folder);
  if ((await ports.files.stat(path)) === null) return;
  const read = await readDocument(ports, progressDocument, path);
  if (read.ok) {
    findings.push({ what: 'progress.json is whole.', remedy: '', state: 'whole' });
    return;
  }
  if (read.problem.tag === 'too-new') {
    findings.push({
      what: 'progress.json was kept by a newer Plumbweft.',
      remedy: 'Look with that one.',
      state: 'note',
    });
    return;
  }
  if (mend) await putAside(ports, path);
  findings.push({
    what: `progress.json can't be used: ${read.problem.sentence}`,
    remedy: mend
      ? 'It is put aside. Your place in the order of work is to be set again; the cloth itself shows it.'
      : 'With --mend it is put aside, and your place in the order of work is to be set again.',
    state: mend ? 'mended' : 'mendable',
  });
}

interface Needed {
  readonly checks: number;
  /** Photographs that checks point at, and one check for each. */
  readonly photos: ReadonlyMap<string, string>;
}

async function lookAtChecks(
  ports: StorePorts,
  folder: string,
  mend: boolean,
  findings: Finding[],
  onStep: (words: string) => void,
): Promise<Needed> {
  const photos = new Map<string, string>();
  let checks = 0;
  for (const id of await checkIds(ports, folder)) {
    const read = await readCheck(ports, folder, id);
    checks++;
    if (checks % 100 === 0) onStep(`${checks} checks`);
    if (read.ok) {
      photos.set(read.value.record.photo.hash, id);
      continue;
    }
    if (read.problem.tag === 'too-new') {
      findings.push({
        what: `Check ${id} was kept by a newer Plumbweft.`,
        remedy: 'Look with that one.',
        state: 'note',
      });
      continue;
    }
    const path = layout.check(folder, id);
    if (mend) await putAside(ports, path);
    findings.push({
      what: `Check ${id} can't be used: ${read.problem.sentence}`,
      remedy: mend
        ? 'It is put aside. If its photograph is still here, measure that again.'
        : 'Its figures are lost; with --mend the file is put aside. Its photograph can be measured again.',
      state: 'beyond-mending',
    });
  }
  return { checks, photos };
}

async function lookAtPhotos(
  ports: StorePorts,
  folder: string,
  mend: boolean,
  findings: Finding[],
  needed: Needed,
  onStep: (words: string) => void,
): Promise<number> {
  const whole = new Set<string>();
  let photos = 0;
  const names =
    (await ports.files.stat(layout.photos(folder)))?.kind === 'folder'
      ? await ports.files.list(layout.photos(folder))
      : [];
  for (const name of [...names].sort()) {
    const found = PHOTO_NAME.exec(name);
    if (found === null) continue;
    photos++;
    if (photos % 100 === 0) onStep(`${photos} photographs`);
    const path = join(layout.photos(folder), name);
    if ((await sha256OfFile(ports.files, path)) === found[1]) {
      whole.add(found[1]!);
      continue;
    }
    if (mend) await putAside(ports, path);
    findings.push({
      what: `Photograph ${found[1]!.slice(0, 12)} is damaged.`,
      remedy: `${mend ? 'It is put aside. ' : ''}Bring it back from a copy of the piece; the figures of its checks are still kept.`,
      state: 'beyond-mending',
    });
  }
  for (const [hash, id] of needed.photos) {
    if (whole.has(hash)) continue;
    findings.push({
      what: `Check ${id} has no whole photograph.`,
      remedy: 'Its figures are kept. Bring the photograph back from a copy of the piece if you have one.',
      state: 'beyond-mending',
    });
  }
  return photos;
}

async function lookAtVersions(ports: StorePorts, folder: string, mend: boolean, findings: Finding[]): Promise<void> {
  const current = await readDocument(ports, pieceDocument, layout.piece(folder));
  const revisions = await previousRevisions(ports, folder);
  for (const revision of revisions) {
    const path = layout.previousPiece(folder, revision);
    const read = await readDocument(ports, pieceDocument, path);
    if ((read.ok && read.value.revision === revision) || (!read.ok && read.problem.tag === 'too-new')) continue;
    if (mend) {
      await ports.files.remove(path);
      await ports.files.flushFolder(layout.previous(folder));
    }
    findings.push({
      what: `The kept version ${revision} of piece.json is damaged.`,
      remedy: mend
        ? 'It is removed; the piece itself is not touched by that.'
        : 'With --mend it is removed; the piece itself is not touched by that.',
      state: mend ? 'mended' : 'mendable',
    });
  }
  if (current.ok && !revisions.includes(current.value.revision)) {
    if (mend) await keepVersion(ports, folder, current.value.revision, current.value.text);
    findings.push({
      what: 'The current version of piece.json has no second copy.',
      remedy: mend ? 'One is made.' : 'With --mend one is made.',
      state: mend ? 'mended' : 'mendable',
    });
  }
}

async function lookAtLeftovers(ports: StorePorts, folder: string, mend: boolean, findings: Finding[]): Promise<void> {
  const known: Readonly<Record<string, RegExp>> = {
    '': /^(piece\.json|progress\.json|photos|checks|previous|\.lock|\.DS_Store|Thumbs\.db|desktop\.ini)$/,
    photos: PHOTO_NAME,
    checks: CHECK_NAME,
    previous: PREVIOUS_NAME,
  };
  for (const [place, names] of Object.entries(known)) {
    const at = join(folder, place);
    if ((await ports.files.stat(at))?.kind !== 'folder') {
      if (mend) await ensureFolder(ports, folder, at);
      findings.push({
        what: `The folder ${place} is missing.`,
        remedy: mend ? 'It is made again.' : 'With --mend it is made again.',
        state: mend ? 'mended' : 'mendable',
      });
      continue;
    }
    for (const name of await ports.files.list(at)) {
      if (names.test(name) || name.endsWith('.aside')) continue;
      const half = name.startsWith('.') && (name.endsWith(PART_ENDING) || name.startsWith('.unlock.'));
      if (half) {
        if (mend) await removeTree(ports.files, join(at, name));
        findings.push({
          what: 'A half-written file was left by a program that stopped.',
          remedy: mend ? 'It is removed; nothing kept was in it.' : 'With --mend it is removed; nothing kept is in it.',
          state: mend ? 'mended' : 'mendable',
        });
      } else {
        findings.push({
          what: `"${place === '' ? name : `${place}/${name}`}" is not a file of the piece.`,
          remedy: 'It is left alone.',
          state: 'note',
        });
      }
    }
  }
}
