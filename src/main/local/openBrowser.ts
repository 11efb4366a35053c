import { spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const inPath = (name: string): boolean =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, name), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });

function opener(): readonly [string, readonly string[]] | null {
  if (process.platform === 'win32') return ['cmd', ['/c', 'start', '']];
  if (process.platform === 'darwin') return ['open', []];
  // Without a screen there is no browser to open.
  const hasScreen = (process.env.DISPLAY ?? '') !== '' || (process.env.WAYLAND_DISPLAY ?? '') !== '';
  return hasScreen && inPath('xdg-open') ? ['xdg-open', []] : null;
}

/** Opens an address in the weaver's browser. @returns false when there is none to open. */
export function openBrowser(address: string): boolean {
  const found = opener();
  if (found === null) return false;
  const [command, before] = found;
  const child = spawn(command, [...before, address], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
  return true;
}
