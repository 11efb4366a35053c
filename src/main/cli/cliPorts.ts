import { join, resolve } from 'node:path';
import { realStorePorts, VISION_SECONDS } from '../service/realPorts.ts';
import type { StorePorts } from '../store/storePorts.ts';
import { type LockOwner, thisProcess } from '../store/thisProcess.ts';
import type { VisionWorker } from '../vision/visionThread.ts';

/** What every command needs. */
export interface CliPorts {
  readonly root: string;
  readonly store: StorePorts;
  readonly owner: LockOwner;
  readonly worker: VisionWorker;
  /** Where relative paths start: the folder the command was typed in, also when npm moved elsewhere. */
  readonly path: (given: string) => string;
}

/** @param entryFolder the folder of the built entry, beside which the worker lies. */
export const cliPorts = (entryFolder: string): CliPorts => {
  const typedIn = process.env.INIT_CWD ?? process.cwd();
  return {
    root: resolve(entryFolder, '../..'),
    store: realStorePorts(),
    owner: thisProcess('the command line'),
    worker: { path: join(entryFolder, 'visionWorker.js'), seconds: VISION_SECONDS },
    path: (given) => resolve(typedIn, given),
  };
};
