import { join } from 'node:path';
import { z } from 'zod';
import { type Settings, settingsSchema, usualSettings } from '../../core/contract/hostApi.ts';
import { type Outcome, success } from '../../core/model/outcome.ts';
import { type DocumentKind, type DocumentTag, serialiseDocument } from '../../core/project/document.ts';
import { chooseLanguage } from '../../core/words/chooseLanguage.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { readDocument } from '../store/readDocument.ts';
import { ensureTree } from './ensureTree.ts';
import type { ServicePorts } from './servicePorts.ts';

const keptBefore = z.looseObject({ looms: z.array(z.unknown()) });

/** The program's own records on this computer: settings, and which folders hold pieces. */
export const settingsDocument: DocumentKind<Settings> = {
  format: 'plumbweft-settings',
  version: 3,
  migrations: [
    {
      from: 1,
      name: 'looms have photographs, cameras are known',
      migrate: (body) => {
        const before = keptBefore.parse(body);
        return { ...before, looms: before.looms.map((loom) => ({ loom, photo: null })), cameras: [] };
      },
    },
    { from: 2, name: 'pictures that name no camera count as one', migrate: (body) => body },
  ],
  body: settingsSchema as unknown as z.ZodType<Settings, Settings>,
  called: 'settings',
};

const librarySchema = z.strictObject({
  pieces: z
    .array(
      z.strictObject({
        folder: z.string(),
        /** ISO 8601 instant it was last opened. */
        opened: z.string(),
        sample: z.boolean(),
        /** Taken off the list by the weaver; the folder itself stays. */
        forgotten: z.boolean(),
      }),
    )
    .max(5_000),
});
export type Library = z.output<typeof librarySchema>;
const libraryDocument: DocumentKind<Library> = {
  format: 'plumbweft-library',
  version: 1,
  migrations: [],
  body: librarySchema,
  called: 'list of pieces',
};

type Tag = DocumentTag | FileTag;
export type OwnPorts = Pick<ServicePorts, 'store' | 'places' | 'log'>;

async function read<Body>(
  ports: OwnPorts,
  kind: DocumentKind<Body>,
  name: string,
  usual: Body,
): Promise<Outcome<Body, Tag>> {
  const path = join(ports.places.data, name);
  try {
    if ((await ports.store.files.stat(path)) === null) return success(usual);
  } catch (thrown) {
    return fileProblem(thrown, `reading the ${kind.called}`);
  }
  const loaded = await readDocument(ports.store, kind, path);
  return loaded.ok ? success(loaded.value.body) : loaded;
}

export async function writeOwn<Body>(
  ports: OwnPorts,
  kind: DocumentKind<Body>,
  name: string,
  body: Body,
): Promise<Outcome<Body, Tag>> {
  try {
    await ensureTree(ports.places.data);
    const text = new TextEncoder().encode(serialiseDocument(kind, body, 1, sha256));
    await writeWhole(ports.store.files, join(ports.places.data, name), [text], ports.store.token());
    return success(body);
  } catch (thrown) {
    return fileProblem(thrown, `keeping the ${kind.called}`);
  }
}

/**
 * A damaged own record is put aside under another name, said in the log, and begun anew: it holds nothing of a piece,
 * and without this the program couldn't start.
 */
export async function readOrBeginAnew<Body>(
  ports: OwnPorts,
  kind: DocumentKind<Body>,
  name: string,
  usual: Body,
): Promise<Body> {
  const found = await read(ports, kind, name, usual);
  if (found.ok) return found.value;
  ports.log.write('problem', `${found.problem.tag}: ${found.problem.sentence}`);
  if (found.problem.tag !== 'too-new') {
    const path = join(ports.places.data, name);
    await ports.store.files.rename(path, `${path}.${ports.store.token()}.aside`).catch(() => undefined);
  }
  return usual;
}

/** Until settings are kept, the language is the one the system or the browser asks for. */
export const readSettings = (ports: OwnPorts & Pick<ServicePorts, 'shell'>): Promise<Settings> =>
  readOrBeginAnew(ports, settingsDocument, 'settings.json', {
    ...usualSettings,
    language: chooseLanguage(ports.shell.languages()),
  });
export const writeSettings = (ports: OwnPorts, settings: Settings) =>
  writeOwn(ports, settingsDocument, 'settings.json', settings);
export const readLibrary = (ports: OwnPorts): Promise<Library> =>
  readOrBeginAnew(ports, libraryDocument, 'library.json', { pieces: [] });
export const writeLibrary = (ports: OwnPorts, library: Library) =>
  writeOwn(ports, libraryDocument, 'library.json', library);
