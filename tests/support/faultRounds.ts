import type { FileLayer } from '../../src/main/files/fileLayer.ts';
import type { StorePorts } from '../../src/main/store/storePorts.ts';
import type { Prepared, Scenario } from './faultScenarios.ts';
import { failingFiles, fullFiles } from './faultyFiles.ts';
import { type Carelessness, simulatedDisk } from './simulatedDisk.ts';

export interface FaultTally {
  /** How often something was made to go wrong. */
  tries: number;
  /** Of these, how often the writing said so. */
  refused: number;
  wrong: string[];
}

/** @param names begins every token: whoever comes to a disk later must not make the names of those before. */
export function portsOver(files: FileLayer, names = 't'): StorePorts {
  let count = 0;
  return {
    files,
    now: () => new Date(Date.UTC(2026, 10, 25, 9)),
    token: () => `${names}${(count++).toString(36).padStart(6, '0')}`,
  };
}

const HOME = '/home';

/** A disk in memory with the scenario laid out, all of it safe. */
async function laidOut(scenario: Scenario, careless: Carelessness = {}) {
  const disk = simulatedDisk(undefined, careless);
  await disk.files.makeFolder(HOME);
  const ports = portsOver(disk.files);
  const prepared = await scenario.prepare(ports, HOME);
  for (const folder of ['/', HOME]) await disk.files.flushFolder(folder);
  if ((await disk.files.stat(`${HOME}/piece`)) !== null) await disk.files.flushFolder(`${HOME}/piece`);
  return { disk, ports, prepared };
}

/** Does the writing over spoilt files, looks, does it again over good ones, and looks again. */
async function once(
  tally: FaultTally,
  where: string,
  { ports, prepared }: { readonly ports: StorePorts; readonly prepared: Prepared },
  spoil: (files: FileLayer) => FileLayer,
): Promise<void> {
  tally.tries++;
  const outcome = await prepared.act({ ...ports, files: spoil(ports.files) });
  if (outcome === 'refused') tally.refused++;
  const wrong = await prepared.wrong(ports, outcome === 'done');
  if ((await prepared.act(ports)) !== 'done') wrong.push('asked again it does not go through');
  wrong.push(...(await prepared.wrong(ports, true)));
  tally.wrong.push(...wrong.map((words) => `${where}: ${words}`));
}

const nothing = (): FaultTally => ({ tries: 0, refused: 0, wrong: [] });

/** Every call of the writing fails in turn: once with trouble of the disk, then for good as each way a disk goes. */
export async function failEveryCall(scenario: Scenario): Promise<FaultTally> {
  const tally = nothing();
  const first = await laidOut(scenario);
  const counting = failingFiles(first.ports.files, null);
  await first.prepared.act({ ...first.ports, files: counting });
  for (let at = 0; at < counting.calls.length; at++) {
    for (const [code, andAfter] of [
      ['EIO', false],
      ['EIO', true],
      ['EACCES', true],
      ['EROFS', true],
      ['ENOSPC', true],
    ] as const) {
      const where = `${scenario.name}, call ${at} (${counting.calls[at]}) ${code}${andAfter ? ' from there on' : ''}`;
      await once(tally, where, await laidOut(scenario), (files) => failingFiles(files, { at, code, andAfter }));
    }
  }
  return tally;
}

/** The disk fills up at every `step`-th byte of what is written. */
export async function fillDisk(scenario: Scenario, step: number): Promise<FaultTally> {
  const tally = nothing();
  const first = await laidOut(scenario);
  let bytes = 0;
  const counted: FileLayer = {
    ...first.ports.files,
    async create(path) {
      const file = await first.ports.files.create(path);
      return {
        ...file,
        write: (given) => {
          bytes += given.length;
          return file.write(given);
        },
      };
    },
  };
  await first.prepared.act({ ...first.ports, files: counted });
  for (let room = 0; room < bytes; room += step) {
    await once(tally, `${scenario.name}, room for ${room}`, await laidOut(scenario), (files) => fullFiles(files, room));
  }
  return tally;
}

/** The power goes after every change; every disk it may leave, up to `most` at each place, is looked at. */
export async function cutPower(scenario: Scenario, most: number, careless: Carelessness = {}): Promise<FaultTally> {
  const tally = nothing();
  const { disk, ports, prepared } = await laidOut(scenario, careless);
  // Collected while the writing runs, looked at after it: looking takes time that the writing must not see.
  const left: FileLayer[] = [];
  disk.onChange = () => left.push(...disk.afterPowerCut(most));
  if ((await prepared.act(ports)) !== 'done') throw new Error(`${scenario.name} was refused`);
  disk.onChange = () => undefined;
  const look = async (files: FileLayer, answered: boolean) => {
    tally.tries++;
    const wrong = await prepared.wrong(portsOver(files, 'later'), answered);
    tally.wrong.push(...wrong.map((words) => `${scenario.name}, power cut: ${words}`));
  };
  for (const files of left) await look(files, false);
  for (const files of disk.afterPowerCut(most)) await look(files, true);
  return tally;
}
