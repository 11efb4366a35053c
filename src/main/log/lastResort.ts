import type { Log } from './log.ts';

/**
 * What nothing else caught is written to the log. An unhandled rejection leaves the program running, as the work of
 * other pieces goes on; an uncaught throw ends it through `stop`, since its state is no longer known.
 */
export function catchLastResort(log: Log, stop: () => void): void {
  const words = (thrown: unknown) => (thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown));
  process.on('unhandledRejection', (thrown) => log.write('problem', `unhandled: ${words(thrown)}`));
  process.on('uncaughtException', (thrown) => {
    log.write('problem', `uncaught: ${words(thrown)}`);
    stop();
  });
}
