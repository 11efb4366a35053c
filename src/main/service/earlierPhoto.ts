import type { Piece } from '../../core/model/piece.ts';
import { checkIds, readCheck } from '../store/checkStore.ts';
import { readPhoto } from '../store/photoStore.ts';
import type { StorePorts } from '../store/storePorts.ts';
import type { EarlierPhoto } from '../vision/visionRequest.ts';

/**
 * The newest kept check that a new picture may be referred to, with its photograph: measured by itself, of another
 * photograph, with as many ends as the piece has now. One that was itself placed by an earlier check isn't taken, so
 * that errors don't run on from check to check.
 * @param hash of the new picture.
 * @returns null where the piece has none, or its photograph can't be read.
 */
export async function earlierPhoto(
  store: StorePorts,
  folder: string,
  piece: Piece,
  hash: string,
): Promise<EarlierPhoto | null> {
  for (const id of [...(await checkIds(store, folder))].reverse()) {
    const read = await readCheck(store, folder, id);
    if (!read.ok) continue;
    const { photo, reading, marks, taken, kept } = read.value.record;
    const byItself = reading.status === 'measured' && reading.reference?.method !== 'earlier-check';
    if (!byItself || photo.hash === hash || reading.ends.length !== piece.warp.ends) continue;
    const bytes = await readPhoto(store, folder, photo.hash);
    if (!bytes.ok) continue;
    const fells = reading.ends.map(({ fell }) => fell?.value ?? null);
    return { bytes: bytes.value, marks, camera: photo.camera, fells, when: taken ?? kept };
  }
  return null;
}
