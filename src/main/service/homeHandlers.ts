import { fileProblem } from '../files/fileProblem.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import { dropLoomPhotos } from './loomPhotos.ts';
import { readSettings, writeSettings } from './ownDocuments.ts';
import type { ServicePorts } from './servicePorts.ts';
import { troubleReport } from './troubleReport.ts';

/** Calls that concern the program, not a piece. */
export function homeHandlers(
  ports: ServicePorts,
): Handlers<'about' | 'readSettings' | 'writeSettings' | 'saveFile' | 'troubleReport'> {
  const { shell } = ports;
  return {
    about: async () => answer({ shell: shell.name, version: shell.version, why: shell.why }),
    readSettings: async () => answer(await readSettings(ports)),
    async writeSettings(settings) {
      const before = await readSettings(ports);
      const written = await writeSettings(ports, settings);
      if (written.ok) await dropLoomPhotos(ports, before, settings);
      return written.ok ? answer(written.value) : written;
    },
    async saveFile({ name }, bytes) {
      if (shell.chooseSaveFile === null) return answer(null);
      const path = await shell.chooseSaveFile(name);
      if (path === null) return answer({ saved: false });
      try {
        await writeWhole(ports.store.files, path, [bytes ?? new Uint8Array()], ports.store.token());
        return answer({ saved: true });
      } catch (thrown) {
        return fileProblem(thrown, 'saving the file');
      }
    },
    troubleReport: async () => answer({ text: troubleReport(ports) }),
  };
}
