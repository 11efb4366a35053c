import { join } from 'node:path';
import type { Settings } from '../../core/contract/hostApi.ts';
import { failure } from '../../core/model/outcome.ts';
import { readImageHeader } from '../decode/imageHeader.ts';
import { inspectPhoto } from '../decode/inspectPhoto.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { askVision } from '../vision/visionJobs.ts';
import { ensureTree } from './ensureTree.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import type { ServicePorts } from './servicePorts.ts';

/** Enough to tell one loom from another, px. */
const SIZE = { width: 960, height: 720 };
const LIMIT = 4 * 1024 * 1024;

const fileOf = (ports: Pick<ServicePorts, 'places'>, photo: string) => join(ports.places.data, 'looms', `${photo}.jpg`);

/** Photographs of looms, kept small among the program's own records beside the settings that name them. */
export function loomPhotoHandlers(ports: ServicePorts): Handlers<'keepLoomPhoto' | 'loomPhoto'> {
  const { store, worker } = ports;
  return {
    async keepLoomPhoto(_, sent) {
      if (sent === null) return failure('photo-missing', 'No photograph came along.', 'Choose the photograph again.');
      const inspected = inspectPhoto(sent);
      if (!inspected.ok) return inspected;
      const made = await askVision<'image'>(worker, { kind: 'image', bytes: sent, fit: SIZE });
      if (!made.ok) return made;
      const { jpeg } = made.value;
      const photo = sha256(jpeg);
      try {
        await ensureTree(join(ports.places.data, 'looms'));
        await writeWhole(store.files, fileOf(ports, photo), [jpeg], store.token());
        return answer({ photo });
      } catch (thrown) {
        return fileProblem(thrown, 'keeping the photograph of the loom');
      }
    },
    async loomPhoto({ photo }) {
      try {
        const jpeg = await store.files.read(fileOf(ports, photo), LIMIT);
        const { width = 0, height = 0 } = readImageHeader(jpeg) ?? {};
        return answer({ type: 'image/jpeg', width, height }, jpeg);
      } catch (thrown) {
        return fileProblem(thrown, 'reading the photograph of the loom');
      }
    },
  };
}

/** Takes away the photographs that settings named and name no more. */
export async function dropLoomPhotos(ports: ServicePorts, before: Settings, now: Settings): Promise<void> {
  const named = new Set(now.looms.map(({ photo }) => photo));
  for (const { photo } of before.looms) {
    if (photo === null || named.has(photo)) continue;
    await ports.store.files.remove(fileOf(ports, photo)).catch(() => ports.log.write('note', 'loom photograph left'));
  }
}
