import { readFileSync } from 'node:fs';
import { checkDocument } from '../../src/core/project/checkDocument.ts';
import { serialiseDocument } from '../../src/core/project/document.ts';
import { pieceDocument } from '../../src/core/project/pieceDocument.ts';
import { importPiece } from '../../src/main/exchange/importPiece.ts';
import { openZipSource } from '../../src/main/exchange/zipSource.ts';
import { sha256 } from '../../src/main/files/sha256.ts';
import { createPiece } from '../../src/main/store/createPiece.ts';
import { openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { readPiece } from '../../src/main/store/readPiece.ts';
import { saveProgress } from '../../src/main/store/savePiece.ts';
import type { StorePorts } from '../../src/main/store/storePorts.ts';
import { verifyPiece } from '../../src/main/store/verifyPiece.ts';
import { fixture, lantern, someCheck } from './pieces.ts';
import { nothingAcknowledged, openForTest, owner, photoBytes, storeStep, whatIsWrong } from './storeScript.ts';
import { rawZip } from './zips.ts';

/** One kind of writing, to be made to fail at every place. */
export interface Scenario {
  readonly name: string;
  /** Lays out the disk under `home`, which is there and empty. */
  readonly prepare: (ports: StorePorts, home: string) => Promise<Prepared>;
}
export interface Prepared {
  /** Does the writing; asked again after a failure, it goes through. */
  readonly act: (ports: StorePorts) => Promise<'done' | 'refused'>;
  /**
   * What is wrong on a disk, in words.
   * @param answered whether `act` had said `done`: then nothing of it may be missing; before that, all or nothing.
   */
  readonly wrong: (ports: StorePorts, answered: boolean) => Promise<string[]>;
}

/** As `owner`, but from before the computer started anew, so that what it left locked is let go. */
const before = { ...owner, boot: 'before' };

const storeScenario = (name: string, step: number): Scenario => ({
  name,
  async prepare(ports, home) {
    const folder = `${home}/piece`;
    await createPiece(ports, folder, lantern());
    const opened = await openForTest(ports, folder);
    const state = nothingAcknowledged();
    for (let earlier = 0; earlier < step; earlier++) await storeStep(ports, opened, earlier, state);
    const underWay = structuredClone(state);
    return {
      act: (over) => storeStep(over, opened, step, state),
      wrong: (on, answered) => whatIsWrong(on, folder, answered ? state : underWay, answered ? -1 : step),
    };
  },
});

/** What isn't whole in a folder that must hold a whole piece, or, unless `answered`, nothing. */
async function notWhole(ports: StorePorts, folder: string, answered: boolean): Promise<string[]> {
  if ((await ports.files.stat(folder)) === null) return answered ? ['the piece is not there'] : [];
  const verified = await verifyPiece(ports, folder, owner, false);
  if (!verified.ok) return [verified.problem.tag];
  return verified.value.findings.filter(({ state }) => state !== 'whole').map(({ what }) => what);
}

const making: Scenario = {
  name: 'making a piece',
  prepare: async (_ports, home) => ({
    act: async (over) => {
      const made = await createPiece(over, `${home}/piece`, lantern());
      // Asked again after its answer got lost, it is there already.
      return made.ok || made.problem.tag === 'name-taken' ? 'done' : 'refused';
    },
    wrong: (on, answered) => notWhole(on, `${home}/piece`, answered),
  }),
};

const encode = (text: string) => new TextEncoder().encode(text);

const bringingIn: Scenario = {
  name: 'bringing a zip in',
  async prepare(_ports, home) {
    const photo = photoBytes(1);
    const hash = sha256(photo);
    const zip = rawZip([
      { name: 'piece.json', bytes: encode(serialiseDocument(pieceDocument, lantern(), 4, sha256)), compress: true },
      { name: `photos/${hash}.jpg`, bytes: photo },
      { name: 'checks/c-1.json', bytes: encode(serialiseDocument(checkDocument, someCheck('c-1', hash), 1, sha256)) },
    ]);
    return {
      async act(over) {
        const source = await openZipSource(zip);
        if (!source.ok) throw new Error(source.problem.sentence);
        const brought = await importPiece(over, source.value, `${home}/piece`);
        return brought.ok || brought.problem.tag === 'name-taken' ? 'done' : 'refused';
      },
      wrong: (on, answered) => notWhole(on, `${home}/piece`, answered),
    };
  },
};

/** Writes bytes as another program would, safely on the disk. */
async function put(ports: StorePorts, path: string, bytes: Uint8Array): Promise<void> {
  if ((await ports.files.stat(path)) !== null) await ports.files.remove(path);
  const file = await ports.files.create(path);
  await file.write(bytes);
  await file.flush();
  await file.close();
  await ports.files.flushFolder(path.slice(0, path.lastIndexOf('/')));
}

/** A piece after an evening, closed. */
async function evening(ports: StorePorts, folder: string) {
  await createPiece(ports, folder, lantern());
  const opened = await openForTest(ports, folder);
  const state = nothingAcknowledged();
  for (let step = 0; step < 7; step++) await storeStep(ports, opened, step, state);
  await opened.handle.lock?.release();
  await ports.files.flushFolder(folder);
  return state;
}

const mending: Scenario = {
  name: 'mending',
  async prepare(ports, home) {
    const folder = `${home}/piece`;
    const state = { ...(await evening(ports, folder)), passes: 0 };
    const text = await ports.files.read(`${folder}/piece.json`, 1e7);
    await put(ports, `${folder}/piece.json`, text.subarray(0, text.length >> 1));
    await put(ports, `${folder}/progress.json`, encode('{"format":'));
    await put(ports, `${folder}/photos/.half.part`, encode('x'));
    return {
      async act(over) {
        const mended = await verifyPiece(over, folder, before, true);
        return mended.ok ? 'done' : 'refused';
      },
      async wrong(on, answered) {
        // What wasn't mended yet can still be mended, to the same piece.
        if (!answered && !(await verifyPiece(on, folder, owner, true)).ok) return ['can no longer be mended'];
        return whatIsWrong(on, folder, state, -1);
      },
    };
  },
};

const migrating: Scenario = {
  name: 'migrating',
  async prepare(ports, home) {
    const folder = `${home}/piece`;
    await evening(ports, folder);
    await put(ports, `${folder}/progress.json`, readFileSync(fixture('documents/progress-v1.json')));
    return {
      async act(over) {
        const opened = await openPieceFolder(over, folder, before);
        if (!opened.ok || opened.value.readOnly !== null) return 'refused';
        const progress = { passesDone: 21, planFingerprint: 'f', finished: [], at: '2026-11-25T09:00:00.000Z' };
        const saved = await saveProgress(over, opened.value.handle, progress);
        await opened.value.handle.lock?.release();
        return saved.ok ? 'done' : 'refused';
      },
      async wrong(on, answered) {
        const read = await readPiece(on, folder);
        if (!read.ok) return [read.problem.tag];
        const passes = read.value.progress?.passesDone ?? -1;
        return passes === 21 || (passes === 0 && !answered) ? [] : [`passes ${passes}`];
      },
    };
  },
};

export const scenarios: readonly Scenario[] = [
  storeScenario('saving the piece', 0),
  storeScenario('saving the place', 1),
  storeScenario('keeping a check', 2),
  storeScenario('changing a check', 3),
  storeScenario('throwing a check away', 7),
  making,
  bringingIn,
  mending,
  migrating,
];
