import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';

const here = import.meta.dirname;

/** The built main bundle running over the stand-in for Electron, in a process of its own. */
export interface Stubbed {
  ask<Answer>(question: string, params?: object): Promise<Answer>;
  /** The program's exit code, once it has ended by itself. */
  readonly ended: Promise<number | null>;
  stop(): void;
}

/** @param args as the system would give them after the program's folder. */
export function startStubbed(home: string, env: NodeJS.ProcessEnv = {}, args: readonly string[] = []): Stubbed {
  const child: ChildProcessWithoutNullStreams = spawn(
    process.execPath,
    ['--import', pathToFileURL(join(here, 'register.mjs')).href, join(here, 'drive.mjs'), ...args],
    { env: { ...process.env, PLUMBWEFT_HOME: home, ...env } },
  );
  let trouble = '';
  child.stderr.on('data', (data) => {
    trouble += String(data);
  });
  const waiting: ((line: string | null) => void)[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => waiting.shift()?.(line));
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  void ended.then(() => {
    for (const resolve of waiting.splice(0)) resolve(null);
  });
  return {
    async ask<Answer>(question: string, params: object = {}): Promise<Answer> {
      const line = await new Promise<string | null>((resolve) => {
        waiting.push(resolve);
        child.stdin.write(`${JSON.stringify({ ask: question, ...params })}\n`);
      });
      if (line === null) throw new Error(`the bundle ended: ${trouble}`);
      const said = JSON.parse(line) as { answer: Answer; thrown?: string };
      if (said.thrown !== undefined) throw new Error(said.thrown);
      return said.answer;
    },
    ended,
    stop: () => child.kill(),
  };
}
