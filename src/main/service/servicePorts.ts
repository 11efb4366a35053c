import type { HostEvent } from '../../core/contract/hostApi.ts';
import type { Log } from '../log/log.ts';
import type { StorePorts } from '../store/storePorts.ts';
import type { LockOwner } from '../store/thisProcess.ts';
import type { VisionWorker } from '../vision/visionThread.ts';
import type { Places } from './places.ts';

/** What only the shell around the service can do. A null means: this shell can't. */
export interface ShellPorts {
  readonly name: 'electron' | 'local';
  readonly version: string;
  /** One plain line: why this shell and not the other. */
  readonly why: string;
  /** The languages the system or the browser asks for, the dearest first (BCP 47). */
  readonly languages: () => readonly string[];
  readonly chooseFolder: (() => Promise<string | null>) | null;
  readonly chooseSaveFile: ((name: string) => Promise<string | null>) | null;
  readonly reveal: ((path: string) => void) | null;
  /** Puts a piece's folder into the system's own list of recent documents. */
  readonly opened: ((path: string) => void) | null;
}

export interface ServicePorts {
  readonly store: StorePorts;
  readonly owner: LockOwner;
  readonly places: Places;
  readonly worker: VisionWorker;
  readonly shell: ShellPorts;
  readonly log: Log;
  readonly tell: (event: HostEvent) => void;
}
