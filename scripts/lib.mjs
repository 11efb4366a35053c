// Shared by the starting scripts. Plain Node, no packages: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '..');
export const onWindows = process.platform === 'win32';

/** Newest change among files and folders, ms; 0 when there are none. */
export function newestChange(paths) {
  let newest = 0;
  for (const path of paths) {
    const stat = statSync(path, { throwIfNoEntry: false });
    if (stat === undefined) continue;
    newest = Math.max(newest, stat.mtimeMs);
    if (stat.isDirectory()) newest = Math.max(newest, newestChange(readdirSync(path).map((name) => join(path, name))));
  }
  return newest;
}

/** Runs a program and answers its exit code; its words go where `stdio` says. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: onWindows, ...options });
  return result.error ? 1 : (result.status ?? 1);
}

/** The whole path of a program, or null. */
export function findProgram(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const path = join(folder, onWindows ? `${name}.exe` : name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Not in this folder.
    }
  }
  return null;
}

/** The Electron runtime, looked for by files alone: asking the package for it would start a download. */
export function findElectron() {
  const override = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  const names = { win32: 'electron.exe', darwin: 'Electron.app/Contents/MacOS/Electron' };
  const name = names[process.platform] ?? 'electron';
  if (override) {
    const path = join(override, name);
    return existsSync(path) ? path : null;
  }
  const folder = join(root, 'node_modules/electron');
  const pathFile = join(folder, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const path = join(folder, 'dist', readFileSync(pathFile, 'utf8').trim());
  return existsSync(path) ? path : null;
}

/** A Chromium that can drive the browser tests: named, in the path, or the one Playwright keeps; else null. */
export async function findChromium() {
  const named = process.env.PLUMBWEFT_CHROMIUM;
  if (named && existsSync(named)) return named;
  for (const name of ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']) {
    const found = findProgram(name);
    if (found !== null) return found;
  }
  try {
    const { chromium } = await import('playwright');
    const path = chromium.executablePath();
    return existsSync(path) ? path : null;
  } catch {
    return null;
  }
}
