import type { CheckRecord, LoomReading } from '../../core/model/check.ts';
import type { Marks } from '../../core/model/marks.ts';
import type { Outcome } from '../../core/model/outcome.ts';
import { readImageHeader } from '../decode/imageHeader.ts';
import type { PhotoMetadata } from '../decode/photoMetadata.ts';
import { type CheckStoreTag, keepCheck } from '../store/checkStore.ts';
import { addPhoto, type PhotoStoreTag } from '../store/photoStore.ts';
import type { PieceHandle } from '../store/pieceHandle.ts';
import type { StorePorts } from '../store/storePorts.ts';
import { checkId } from './checkId.ts';

/** A measurement with all that is kept beside it. */
export interface Measured {
  readonly hash: string;
  readonly name: string;
  readonly rendered: boolean;
  readonly bytes: Uint8Array;
  readonly marks: Marks | null;
  readonly metadata: PhotoMetadata;
  readonly reading: LoomReading;
}

/** A check's name and instant: the same when it is asked for again because an answer got lost, so it is kept once. */
export interface KeptStamp {
  readonly id: string;
  readonly kept: string;
}

export function newStamp(store: StorePorts): KeptStamp {
  const now = store.now();
  return { id: checkId(now, store.token()), kept: now.toISOString() };
}

/** Keeps a measurement: the photograph first, then the check that points at it. */
export async function keepMeasured(
  store: StorePorts,
  handle: PieceHandle,
  measured: Measured,
  note: string,
  stamp: KeptStamp,
): Promise<Outcome<CheckRecord, CheckStoreTag | PhotoStoreTag>> {
  const ending = readImageHeader(measured.bytes)?.ending ?? 'jpg';
  const added = await addPhoto(store, handle, measured.bytes, ending);
  if (!added.ok) return added;
  const { hash, name, rendered, marks, metadata, reading } = measured;
  return keepCheck(store, handle, {
    ...stamp,
    taken: metadata.taken,
    photo: { hash, name: name.slice(0, 300), rendered, camera: metadata.camera },
    marks,
    reading,
    dismissed: [],
    note,
  });
}
