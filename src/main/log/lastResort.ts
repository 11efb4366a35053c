import type { Log } from './log.ts';

const words = (thrown: unknown) => (thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown));

/**
 * What nothing else caught is written to the log. An unhandled rejection leaves the program running, as the work of
 * other pieces goes on; an uncaught throw ends it through `stop`, since its state is no longer known.
 */
export function catchLastResort(log: Log, stop: () => void): void {
  process.on('unhandledRejection', (thrown) => log.write('problem', `unhandled: ${words(thrown)}`));
  process.on('uncaughtException', (thrown) => {
    log.write('problem', `uncaught: ${words(thrown)}`);
    stop();
  });
}

/**
 * Notes why the program can't start.
 * @returns what to tell the weaver: what happened, and what to do. A window that never comes tells nobody anything.
 */
export function notStarted(log: Log, thrown: unknown): readonly [sentence: string, remedy: string] {
  log.write('problem', `not started: ${words(thrown)}`);
  return [
    'Plumbweft could not start.',
    'A part of it is missing or can’t be read. Install it again; your pieces are not touched by that.',
  ];
}
