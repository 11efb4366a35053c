import { join } from 'node:path';
import type { HostEvent } from '../../src/core/contract/hostApi.ts';
import { openLog } from '../../src/main/log/log.ts';
import { findPlaces } from '../../src/main/service/places.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { createService, type HostService } from '../../src/main/service/service.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';
import type { VisionWorker } from '../../src/main/vision/visionThread.ts';
import { projectRoot } from './pieces.ts';

/** The worker straight from its source, through tsx. */
export const sourceWorker: VisionWorker = {
  path: join(projectRoot, 'tests/support/visionWorkerFromSource.mjs'),
  seconds: 170,
};

export interface ServiceForTest {
  readonly service: HostService;
  readonly events: HostEvent[];
  readonly home: string;
}

/** A whole service with its data under `home`. */
export function serviceForTest(
  home: string,
  tell?: (event: HostEvent) => void,
  languages: () => readonly string[] = () => ['en-US'],
): ServiceForTest {
  const events: HostEvent[] = [];
  const places = findPlaces(projectRoot, home);
  const service = createService({
    store: realStorePorts(),
    owner: thisProcess('a test'),
    places,
    worker: sourceWorker,
    shell: {
      name: 'local',
      version: '0.0.0',
      why: 'a test',
      languages,
      chooseFolder: null,
      chooseSaveFile: null,
      reveal: null,
      opened: null,
    },
    log: openLog(join(places.data, 'log'), () => new Date()),
    tell: tell ?? ((event) => events.push(event)),
  });
  return { service, events, home };
}
