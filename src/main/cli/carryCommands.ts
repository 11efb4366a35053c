import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { exportPiece } from '../exchange/exportPiece.ts';
import { openFolderSource } from '../exchange/folderSource.ts';
import { importPiece } from '../exchange/importPiece.ts';
import { openZipSource } from '../exchange/zipSource.ts';
import { writeZip } from '../service/writeZip.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { complain, complainOf, say } from './say.ts';

/** `export DIR FILE.zip [--keep-places]`. */
export async function exportCommand(
  ports: CliPorts,
  folder: string,
  file: string,
  keepPlaces: boolean,
): Promise<ExitCode> {
  if ((await ports.store.files.stat(ports.path(file)).catch(() => null)) !== null) {
    complain(`There is already something at ${file}. Choose another name.`);
    return exitCodes.wrongUse;
  }
  const zip = exportPiece(ports.store, ports.path(folder), { keepPlaces });
  const written = await writeZip(ports, ports.path(file), zip);
  if (!written.ok) {
    complainOf(written.problem);
    return exitCodes.pieceTrouble;
  }
  say(`Exported to ${file}${keepPlaces ? ', places in photographs kept' : ', places in photographs taken out'}.`);
  return exitCodes.done;
}

/** `import SOURCE DIR`: from a zip or a folder, all of it or nothing. */
export async function importCommand(ports: CliPorts, from: string, folder: string): Promise<ExitCode> {
  const path = ports.path(from);
  const stat = await ports.store.files.stat(path).catch(() => null);
  if (stat === null || (stat.kind !== 'file' && stat.kind !== 'folder')) {
    complain(`There is no zip or folder at ${from}. Give the path of a piece's zip or folder.`);
    return exitCodes.wrongUse;
  }
  const source =
    stat.kind === 'folder'
      ? { ok: true as const, value: openFolderSource(ports.store.files, path) }
      : await openZipSource(path);
  if (!source.ok) {
    complainOf(source.problem);
    return exitCodes.pieceTrouble;
  }
  try {
    await mkdir(dirname(ports.path(folder)), { recursive: true });
  } catch {
    complain(`The folder ${dirname(folder)} can't be made. Choose a place you can write to.`);
    return exitCodes.pieceTrouble;
  }
  const brought = await importPiece(ports.store, source.value, ports.path(folder));
  if (!brought.ok) {
    complainOf(brought.problem);
    return brought.problem.tag === 'name-taken' ? exitCodes.wrongUse : exitCodes.pieceTrouble;
  }
  say(`Brought the piece in to ${folder}.`);
  return exitCodes.done;
}
