// Starts the app: Electron where its runtime is here, otherwise the local host. One plain line says which and why.
//   npm start [-- --local] [-- --no-open] [-- --port N]
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { findElectron, root } from './lib.mjs';

const args = process.argv.slice(2);
const electron = findElectron();
const noScreen =
  process.platform === 'linux' && (process.env.DISPLAY ?? '') === '' && (process.env.WAYLAND_DISPLAY ?? '') === '';
const askedForLocal = args.includes('--local');
const why = askedForLocal
  ? 'it was asked for'
  : electron === null
    ? "the Electron runtime isn't on this computer and couldn't be fetched"
    : 'there is no screen for a window';

const useElectron = electron !== null && !askedForLocal && !noScreen;
console.log(
  useElectron
    ? 'Starting Plumbweft in its own window: the Electron runtime is here.'
    : `Starting Plumbweft in the browser: ${why}.`,
);
const rest = args.filter((arg) => arg !== '--local');
// A root user can't use Chromium's sandbox; refusing to start is right there, so no flag takes it off.
const [command, commandArgs] = useElectron
  ? [electron, [root]]
  : [process.execPath, [join(root, 'out/main/local.js'), '--why', why, ...rest]];
const child = spawn(command, commandArgs, { cwd: root, stdio: 'inherit' });
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
child.on('error', (thrown) => {
  console.error(`It could not be started: ${thrown.message}`);
  process.exitCode = 1;
});
child.on('exit', (code, signal) => {
  process.exitCode = code ?? (signal === null ? 1 : 0);
});
