import { type FSWatcher, watch } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { failure } from '../../core/model/outcome.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { PHOTO_LIMIT } from '../store/layout.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import type { ServicePorts } from './servicePorts.ts';

const PHOTO = /\.(jpe?g|png|webp|avif|heic|heif)$/i;
/** A photograph counts as arrived when its size stays the same this long. */
const SETTLE_MS = 700;

interface Watched {
  readonly folder: string;
  readonly watcher: FSWatcher;
  readonly arrived: Map<string, string>;
}

/** A folder where new photographs arrive, for example from a telephone. One per piece. */
export function watchHandlers(
  ports: ServicePorts,
): Handlers<'watchFolder' | 'watchedPhoto'> & { readonly stopWatching: () => void } {
  const { files } = ports.store;
  const watched = new Map<string, Watched>();

  const stop = (key: string) => {
    watched.get(key)?.watcher.close();
    watched.delete(key);
  };

  /** Says once that a photograph is there, when it has stopped growing. */
  async function settle(key: string, place: Watched, name: string): Promise<void> {
    let before = -1;
    for (let look = 0; look < 60; look++) {
      if (watched.get(key) !== place) return;
      const stat = await files.stat(join(place.folder, name)).catch(() => null);
      if (stat === null || stat.kind !== 'file') return;
      const mark = `${stat.size} ${stat.modifiedMs}`;
      if (stat.size > 0 && stat.size === before) {
        if (place.arrived.get(name) === mark) return;
        place.arrived.set(name, mark);
        ports.tell({ kind: 'watched-photo', key, name });
        return;
      }
      before = stat.size;
      await new Promise((later) => setTimeout(later, SETTLE_MS));
    }
  }

  return {
    async watchFolder({ key, path }) {
      if (path === null) {
        stop(key);
        return answer({ path: null });
      }
      // An empty path asks for the system's dialog.
      const chosen = path === '' ? ((await ports.shell.chooseFolder?.()) ?? null) : path;
      if (chosen === null) return answer({ path: null });
      const folder = resolve(chosen);
      // Asked again for the same folder, what has arrived since the first time must not count as old.
      if (watched.get(key)?.folder === folder) return answer({ path: folder });
      stop(key);
      try {
        const stat = await files.stat(folder);
        if (stat?.kind !== 'folder') {
          return failure('not-there', 'There is no such folder.', 'Give the whole path of a folder on this computer.');
        }
        const arrived = new Map<string, string>();
        for (const name of await files.list(folder)) {
          const there = PHOTO.test(name) ? await files.stat(join(folder, name)) : null;
          if (there !== null) arrived.set(name, `${there.size} ${there.modifiedMs}`);
        }
        const pending = new Set<string>();
        const watcher = watch(folder, { persistent: false }, (_event, name) => {
          if (name === null || !PHOTO.test(name) || pending.has(name)) return;
          pending.add(name);
          void settle(key, place, name).finally(() => pending.delete(name));
        });
        watcher.on('error', () => stop(key));
        const place: Watched = { folder, watcher, arrived };
        watched.set(key, place);
        return answer({ path: folder });
      } catch (thrown) {
        return fileProblem(thrown, 'watching the folder');
      }
    },
    async watchedPhoto({ key, name }) {
      const place = watched.get(key);
      // Only a plain name of a photograph that was announced; never a way to read other files.
      if (place === undefined || basename(name) !== name || !place.arrived.has(name)) {
        return failure('not-there', 'That photograph is not in the watched folder.', 'Choose the photograph by hand.');
      }
      try {
        const stat = await files.stat(join(place.folder, name));
        if (stat?.kind !== 'file') {
          return failure('not-there', 'The photograph is no longer in the watched folder.', 'Copy it there again.');
        }
        return answer({ name }, await files.read(join(place.folder, name), PHOTO_LIMIT));
      } catch (thrown) {
        return fileProblem(thrown, 'reading the photograph');
      }
    },
    stopWatching: () => {
      for (const key of [...watched.keys()]) stop(key);
    },
  };
}
