import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { catchLastResort, notStarted } from '../log/lastResort.ts';
import { openLog } from '../log/log.ts';
import { findPlaces } from '../service/places.ts';
import { realStorePorts, VISION_SECONDS } from '../service/realPorts.ts';
import { createService } from '../service/service.ts';
import { thisProcess } from '../store/thisProcess.ts';
import { type LocalHost, startLocalHost } from './localHost.ts';
import { localOptions } from './localOptions.ts';
import { openBrowser } from './openBrowser.ts';

const root = resolve(import.meta.dirname, '../..');
const options = localOptions(process.argv.slice(2));
if (!options.ok) {
  console.error(`${options.problem.sentence} ${options.problem.remedy}`);
  process.exit(2);
}
const { port, browser, why } = options.value;
const version = (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version;
const places = findPlaces(root);
const log = openLog(join(places.data, 'log'), () => new Date());
const started = startLocalHost({
  page: join(root, 'out/renderer'),
  port,
  log,
  service: (tell, languages) =>
    createService({
      store: realStorePorts(),
      owner: thisProcess('local host'),
      places,
      worker: { path: join(import.meta.dirname, 'visionWorker.js'), seconds: VISION_SECONDS },
      shell: {
        name: 'local',
        version,
        why,
        languages,
        chooseFolder: null,
        chooseSaveFile: null,
        reveal: null,
        opened: null,
      },
      log,
      tell,
    }),
});
let host: LocalHost;
try {
  host = await started;
} catch (thrown) {
  console.error(notStarted(log, thrown).join(' '));
  process.exit(1);
}

let stopping = false;
const stop = (code: number) => {
  if (stopping) return;
  stopping = true;
  host
    .close()
    .catch(() => undefined)
    .finally(() => process.exit(code));
};
catchLastResort(log, () => stop(1));
process.on('SIGINT', () => stop(0));
process.on('SIGTERM', () => stop(0));
process.on('SIGHUP', () => stop(0));

console.log(`Plumbweft is at ${host.address}`);
if (!browser || !openBrowser(host.address)) console.log('Open that address in a browser. Ctrl+C stops it.');
else console.log('It is opening in your browser. Ctrl+C stops it.');
