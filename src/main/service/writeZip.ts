import type { Outcome } from '../../core/model/outcome.ts';
import type { exportPiece } from '../exchange/exportPiece.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { writeWhole } from '../files/writeWhole.ts';
import type { StorePorts } from '../store/storePorts.ts';

/** Writes a zip beside its place and renames it; a half-made zip never bears the name. */
export async function writeZip(
  ports: { readonly store: StorePorts },
  path: string,
  zip: ReturnType<typeof exportPiece>,
): Promise<Outcome<void>> {
  let ended: Outcome<void> | null = null;
  // A problem half-way must stop the writing before the rename, so it is thrown through it.
  const stopped = Symbol('stopped');
  async function* through(): AsyncGenerator<Uint8Array> {
    for (;;) {
      const next = await zip.next();
      if (next.done !== true) {
        yield next.value;
        continue;
      }
      ended = next.value;
      if (!next.value.ok) throw stopped;
      return;
    }
  }
  try {
    await writeWhole(ports.store.files, path, through(), ports.store.token());
    return ended ?? fileProblem(stopped, 'exporting the piece');
  } catch (thrown) {
    return ended !== null && thrown === stopped ? ended : fileProblem(thrown, 'exporting the piece');
  }
}
