import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { localOptions } from '../../src/main/local/localOptions.ts';
import { projectRoot } from '../support/pieces.ts';

describe('what the local host is started with', () => {
  it('is read, and has usual values', () => {
    expect(localOptions([])).toMatchObject({ ok: true, value: { browser: true } });
    expect(localOptions(['--port', '0', '--no-open'])).toMatchObject({ ok: true, value: { port: 0, browser: false } });
  });

  it.each([['--help'], ['--port', 'harbour'], ['--port', '65536'], ['--port=-1'], ['--port'], ['piece']])(
    'is turned away in a sentence: %s %s',
    (...args) => {
      const read = localOptions(args.filter((word) => word !== undefined));
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.problem.remedy).toContain('npm start');
    },
  );

  it('stops the built program with a sentence, not with a trace', () => {
    const { status, stderr } = spawnSync(process.execPath, [join(projectRoot, 'out/main/local.js'), '--help'], {
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toContain('npm start');
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});
