import { arch, platform, release } from 'node:os';
import { redact } from '../log/redact.ts';
import type { ServicePorts } from './servicePorts.ts';

const LINES = 200;

/** What a maintainer needs to know, safe to paste anywhere: no folders, no names, no photographs. */
export function troubleReport(ports: Pick<ServicePorts, 'shell' | 'log'>): string {
  const { shell, log } = ports;
  const head = [
    `Plumbweft ${shell.version}, ${shell.name}`,
    `${platform()} ${release()} ${arch()}, Node ${process.versions.node}`,
    ...(process.versions.electron === undefined ? [] : [`Electron ${process.versions.electron}`]),
    '',
    'Newest lines of the log:',
  ];
  return [...head, ...log.recent(LINES)].map(redact).join('\n');
}
