import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';

/** Who holds a lock: enough to tell whether that program is still running. */
export interface LockOwner {
  /** The machine's name and, where the system tells, which start of it. */
  readonly machine: string;
  readonly boot: string;
  readonly pid: number;
  /** When the process began, in the system's own ticks; empty where the system doesn't tell. */
  readonly began: string;
  readonly shell: string;
}

const readOrEmpty = (path: string): string => {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return '';
  }
};

/** A pid can be given again to another process; the time it began can't. */
function began(pid: number): string {
  // The second field is the program's name in brackets and may hold spaces: count from the last bracket.
  const stat = readOrEmpty(`/proc/${pid}/stat`);
  return (
    stat
      .slice(stat.lastIndexOf(')') + 2)
      .split(' ')
      .at(19) ?? ''
  );
}

export const thisProcess = (shell: string): LockOwner => ({
  machine: hostname(),
  boot: readOrEmpty('/proc/sys/kernel/random/boot_id'),
  pid: process.pid,
  began: began(process.pid),
  shell,
});

/** `elsewhere` when it is another machine's and can't be looked up from here. */
export function ownerState(owner: LockOwner): 'running' | 'gone' | 'elsewhere' {
  if (owner.machine !== hostname()) return 'elsewhere';
  const boot = readOrEmpty('/proc/sys/kernel/random/boot_id');
  if (boot !== '' && owner.boot !== '' && boot !== owner.boot) return 'gone';
  try {
    process.kill(owner.pid, 0);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ESRCH') return 'gone';
  }
  const start = began(owner.pid);
  return owner.began !== '' && start !== '' && start !== owner.began ? 'gone' : 'running';
}
