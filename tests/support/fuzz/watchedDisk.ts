import type { FileLayer } from '../../../src/main/files/fileLayer.ts';
import { simulatedDisk } from '../simulatedDisk.ts';

/** A disk in memory that notes every path that is written, made, moved or removed. */
export function watchedDisk(): { readonly files: FileLayer; readonly touched: string[] } {
  const { files } = simulatedDisk();
  const touched: string[] = [];
  const note =
    <Rest extends unknown[], Result>(call: (path: string, ...rest: Rest) => Promise<Result>) =>
    (path: string, ...rest: Rest): Promise<Result> => {
      touched.push(path);
      return call(path, ...rest);
    };
  return {
    touched,
    files: {
      ...files,
      create: note(files.create),
      remove: note(files.remove),
      makeFolder: note(files.makeFolder),
      removeFolder: note(files.removeFolder),
      rename: async (from, to) => {
        touched.push(from, to);
        await files.rename(from, to);
      },
      link: async (existing, path) => {
        touched.push(path);
        await files.link(existing, path);
      },
    },
  };
}
