import type { Piece } from '../../src/core/model/piece.ts';
import { sha256 } from '../../src/main/files/sha256.ts';
import { changeCheck, checkIds, discardCheck, keepCheck, readCheck } from '../../src/main/store/checkStore.ts';
import { addPhoto, photoNames, readPhoto } from '../../src/main/store/photoStore.ts';
import { type OpenedFolder, openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { readPiece } from '../../src/main/store/readPiece.ts';
import { savePiece, saveProgress } from '../../src/main/store/savePiece.ts';
import type { StorePorts } from '../../src/main/store/storePorts.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';
import { lantern, someCheck } from './pieces.ts';

export const owner = thisProcess('a test');
export const namedPiece = (revision: number): Piece => lantern(`Harbour lantern ${revision}`);
export const photoBytes = (seed: number): Uint8Array =>
  new TextEncoder().encode(`photograph ${seed} ${'x'.repeat(3_000 + seed)}`);
export const idOf = (step: number): string => `20261125-090000-${String(step).padStart(3, '0')}-test`;

/** What was answered for each thing that was asked, so that it can be asked of the disk afterwards. */
export interface Acknowledged {
  revision: number;
  passes: number;
  checks: Map<string, { readonly hash: string; readonly note: string }>;
  discarded: Set<string>;
}

export async function openForTest(ports: StorePorts, folder: string): Promise<OpenedFolder> {
  const opened = await openPieceFolder(ports, folder, owner);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  return opened.value;
}

/** The steps of a weaver's evening, each one store call; step n always does the same. */
export async function storeStep(
  ports: StorePorts,
  opened: OpenedFolder,
  step: number,
  acknowledged: Acknowledged,
): Promise<'done' | 'refused'> {
  const { handle } = opened;
  switch (step % 4) {
    case 0: {
      const saved = await savePiece(ports, handle, acknowledged.revision, namedPiece(acknowledged.revision + 1));
      if (!saved.ok) return 'refused';
      acknowledged.revision = saved.value;
      return 'done';
    }
    case 1: {
      const progress = { passesDone: step, planFingerprint: 'f', finished: [], at: '2026-11-25T09:00:00.000Z' };
      const saved = await saveProgress(ports, handle, progress);
      if (!saved.ok) return 'refused';
      acknowledged.passes = step;
      return 'done';
    }
    case 2: {
      const bytes = photoBytes(step);
      const added = await addPhoto(ports, handle, bytes, 'jpg');
      if (!added.ok) return 'refused';
      const kept = await keepCheck(ports, handle, someCheck(idOf(step), added.value));
      if (!kept.ok) return 'refused';
      acknowledged.checks.set(idOf(step), { hash: added.value, note: '' });
      return 'done';
    }
    default: {
      const before = idOf(step - 1);
      if (step % 8 === 7) {
        const gone = await discardCheck(ports, handle, before);
        if (!gone.ok) return 'refused';
        acknowledged.checks.delete(before);
        acknowledged.discarded.add(before);
        return 'done';
      }
      const changed = await changeCheck(ports, handle, before, (record) => ({ ...record, note: `note ${step}` }));
      if (!changed.ok) return 'refused';
      acknowledged.checks.set(before, { hash: sha256(photoBytes(step - 1)), note: `note ${step}` });
      return 'done';
    }
  }
}

export const nothingAcknowledged = (): Acknowledged => ({
  revision: 1,
  passes: 0,
  checks: new Map(),
  discarded: new Set(),
});

/**
 * Looks at what is on a disk after something went wrong in `step`: everything acknowledged is there, and what was
 * under way is either all there or not at all.
 * @returns what is wrong, in words; empty when nothing is.
 */
export async function whatIsWrong(
  ports: StorePorts,
  folder: string,
  acknowledged: Acknowledged,
  step: number,
): Promise<string[]> {
  const wrong: string[] = [];
  const piece = await readPiece(ports, folder);
  if (!piece.ok) return [`the piece does not open: ${piece.problem.tag} ${piece.problem.detail ?? ''}`];
  const { revision, progress } = piece.value;
  const mayBeNext = step % 4 === 0 && revision === acknowledged.revision + 1;
  if (revision !== acknowledged.revision && !mayBeNext) {
    wrong.push(`revision ${revision}, acknowledged ${acknowledged.revision}`);
  }
  const name = revision === 1 ? lantern().name : namedPiece(revision).name;
  if (piece.value.piece.name !== name) wrong.push(`revision ${revision} holds "${piece.value.piece.name}"`);
  const passes = progress?.passesDone ?? 0;
  if (passes !== acknowledged.passes && !(step % 4 === 1 && passes === step)) {
    wrong.push(`passes ${passes}, acknowledged ${acknowledged.passes}`);
  }
  const ids = await checkIds(ports, folder);
  const underWay = step % 4 === 2 ? idOf(step) : step % 4 === 3 ? idOf(step - 1) : null;
  for (const [id, { hash, note }] of acknowledged.checks) {
    if (!ids.includes(id)) {
      if (!(step % 8 === 7 && id === underWay)) wrong.push(`check ${id} is lost`);
      continue;
    }
    const read = await readCheck(ports, folder, id);
    if (!read.ok) {
      wrong.push(`check ${id}: ${read.problem.tag}`);
      continue;
    }
    const noted = read.value.record.note;
    if (noted !== note && !(id === underWay && noted === `note ${step}`)) wrong.push(`check ${id} says "${noted}"`);
    const photo = await readPhoto(ports, folder, hash);
    if (!photo.ok) wrong.push(`photograph of ${id}: ${photo.problem.tag}`);
  }
  for (const id of ids) {
    if (acknowledged.checks.has(id)) continue;
    if (id !== underWay) {
      wrong.push(`check ${id} came back`);
      continue;
    }
    const read = await readCheck(ports, folder, id);
    if (!read.ok) wrong.push(`check ${id} under way: ${read.problem.tag}`);
    else if (step % 4 === 2 && !(await readPhoto(ports, folder, read.value.record.photo.hash)).ok) {
      wrong.push(`check ${id} under way has no photograph`);
    }
  }
  for (const file of await photoNames(ports, folder)) {
    const read = await readPhoto(ports, folder, file.slice(0, 64));
    if (!read.ok) wrong.push(`photograph ${file.slice(0, 8)}: ${read.problem.tag}`);
  }
  return wrong;
}
