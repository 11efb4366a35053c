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
  // Settings are kept in the order they come in, and read as they were last sent: a page that is loaded again asks for
  // them while the page before it is still having them written.
  let written: Promise<unknown> = Promise.resolve();
  return {
    about: async () => answer({ shell: shell.name, version: shell.version, why: shell.why }),
    async readSettings() {
      await written;
      return answer(await readSettings(ports));
    },
    writeSettings(settings) {
      const turn = written.then(async () => {
        const before = await readSettings(ports);
        const kept = await writeSettings(ports, settings);
        if (kept.ok) await dropLoomPhotos(ports, before, settings);
        return kept.ok ? answer(kept.value) : kept;
      });
      written = turn.catch(() => undefined);
      return turn;
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
