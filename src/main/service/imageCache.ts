import { join } from 'node:path';
import type { DisplayImage } from '../decode/displayJpeg.ts';
import { readImageHeader } from '../decode/imageHeader.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { ensureTree } from './ensureTree.ts';
import type { ServicePorts } from './servicePorts.ts';

const PICTURES_KEPT = 600;
const PICTURE_LIMIT = 8 * 1024 * 1024;

/** Pictures made for the screen, so that a list of checks opens quickly. Anything in here can be made again. */
export function openImageCache(ports: Pick<ServicePorts, 'places' | 'store' | 'log'>) {
  const folder = join(ports.places.data, 'pictures');
  const { files, token } = ports.store;
  const pathOf = (hash: string, size: string) => join(folder, `${hash}-${size}.jpg`);
  return {
    async read(hash: string, size: string): Promise<DisplayImage | null> {
      try {
        const jpeg = await files.read(pathOf(hash, size), PICTURE_LIMIT);
        const header = readImageHeader(jpeg);
        return header === null ? null : { width: header.width, height: header.height, jpeg };
      } catch {
        return null;
      }
    },
    async keep(hash: string, size: string, image: DisplayImage): Promise<void> {
      try {
        await ensureTree(folder);
        await writeWhole(files, pathOf(hash, size), [image.jpeg], token());
        const names = await files.list(folder);
        if (names.length <= PICTURES_KEPT) return;
        const dated = await Promise.all(
          names.map(async (name) => ({ name, at: (await files.stat(join(folder, name)))?.modifiedMs ?? 0 })),
        );
        dated.sort((a, b) => a.at - b.at);
        for (const { name } of dated.slice(0, names.length - PICTURES_KEPT + 50))
          await files.remove(join(folder, name));
      } catch (thrown) {
        ports.log.write('note', `picture not cached: ${thrown instanceof Error ? thrown.name : 'thrown'}`);
      }
    },
  };
}
