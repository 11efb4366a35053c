import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { projectRoot } from '../support/pieces.ts';

/** A copy of the project's own rules over almost no source, into which one wrong line at a time is put. */
describe('a line that breaks the layers', () => {
  let root: string;
  beforeAll(() => {
    root = mkdtempSync(join(tmpdir(), 'plumbweft-layers-'));
    for (const name of ['.dependency-cruiser.cjs', 'tsconfig.json', 'biome.json', 'package.json', '.gitignore']) {
      cpSync(join(projectRoot, name), join(root, name));
    }
    cpSync(join(projectRoot, 'scripts/lint'), join(root, 'scripts/lint'), { recursive: true });
    for (const part of ['core', 'main', 'renderer']) {
      mkdirSync(join(root, 'src', part), { recursive: true });
      cpSync(join(projectRoot, 'src', part, 'tsconfig.json'), join(root, 'src', part, 'tsconfig.json'));
    }
    cpSync(join(projectRoot, 'src/core/model'), join(root, 'src/core/model'), { recursive: true });
    symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'));
    spawnSync('git', ['init', '-q'], { cwd: root });
    write('src/core/photo/fine.ts', 'export const fine = 1;\n');
    write('src/main/store/fine.ts', 'export const fine = 1;\n');
    write('src/renderer/parts/fine.ts', 'export const fine = 1;\n');
  });
  afterAll(() => rmSync(root, { recursive: true, force: true }));

  const write = (path: string, text: string) => {
    mkdirSync(join(root, path, '..'), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  const run = (script: string, args: readonly string[]) => {
    const done = spawnSync(process.execPath, [join(projectRoot, 'node_modules', script), ...args], {
      cwd: root,
      encoding: 'utf8',
    });
    return { code: done.status, said: done.stdout + done.stderr };
  };
  const layers = () =>
    run('dependency-cruiser/bin/dependency-cruise.mjs', ['--config', '.dependency-cruiser.cjs', 'src']);
  const types = () => run('typescript/bin/tsc', ['-p', 'src/core']);
  const lint = () => run('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', 'src']);

  /** Puts wrong files in, looks once, and takes them out again. */
  const seeded = <Result>(files: readonly (readonly [string, string])[], look: () => Result): Result => {
    for (const [path, text] of files) write(path, text);
    try {
      return look();
    } finally {
      for (const [path] of files) rmSync(join(root, path));
    }
  };

  test('is not seen where there is none', () => {
    expect(layers()).toMatchObject({ code: 0, said: expect.stringMatching(/no dependency violations found \(\d\d/) });
    expect(types()).toMatchObject({ code: 0 });
    expect(lint()).toMatchObject({ code: 0 });
  });

  test('is caught by the rule that is meant for it', () => {
    const fine = (path: string) => `import { fine } from '${path}';\nexport const bad = fine;\n`;
    const readFile = "import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;\n";
    const wrong = [
      ['src/core/photo/bad1.ts', fine('../../main/store/fine.ts'), 'core-imports-only-core'],
      [
        'src/core/photo/bad2.ts',
        "import type { Stats } from 'node:fs';\nexport type Bad = Stats;\n",
        'core-has-no-node',
      ],
      ['src/core/photo/bad3.ts', "import sharp from 'sharp';\nexport const bad = sharp;\n", 'core-packages'],
      ['src/core/model/bad4.ts', fine('../photo/fine.ts'), 'core-model-looks-down-only'],
      ['src/core/elsewhere/bad5.ts', fine('../photo/fine.ts'), 'core-folder-is-listed'],
      ['src/renderer/parts/bad6.ts', fine('../../main/store/fine.ts'), 'renderer-never-meets-main'],
      ['src/renderer/parts/bad7.ts', readFile, 'renderer-has-no-node'],
      ['src/main/store/bad8.ts', fine('../../renderer/parts/fine.ts'), 'main-never-meets-renderer'],
      ['src/main/store/bad9.ts', fine('./other.ts'), 'resolvable'],
      ['src/main/store/bad10.ts', fine('../../../tests/fine.ts'), 'source-never-imports-tests'],
    ] as const;
    write('tests/fine.ts', 'export const fine = 1;\n');
    const found = seeded(
      wrong.map(([path, text]) => [path, text] as const),
      layers,
    );
    expect(found.code).not.toBe(0);
    for (const [path, , rule] of wrong) expect(found.said).toContain(`${rule}: ${path}`);
  });

  test('is caught by the types, when it uses the page or Node in the core', () => {
    const wrong = [
      ['src/core/photo/bad1.ts', 'export const bad = document.title;\n'],
      ['src/core/photo/bad2.ts', 'export const bad = process.pid;\n'],
      ['src/core/photo/bad3.ts', 'export const bad = performance.now();\n'],
      ['src/core/photo/bad4.ts', "import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;\n"],
    ] as const;
    const found = seeded(wrong, types);
    for (const [path] of wrong) expect(found.said).toContain(`${path}(1,`);
  });

  test('is caught by the lint, when it uses a clock, chance, any or a star export in the core', () => {
    const wrong = [
      ['src/core/photo/bad1.ts', 'export const bad = () => Date.now();\n'],
      ['src/core/photo/bad2.ts', 'export const bad = () => Math.random();\n'],
      ['src/core/photo/bad3.ts', 'export const bad = () => setTimeout(() => undefined, 1);\n'],
      ['src/core/photo/bad4.ts', 'export const bad = () => crypto.randomUUID();\n'],
      ['src/core/photo/bad5.ts', 'export const bad = (value: any) => value;\n'],
      ['src/core/photo/bad6.ts', "export * from './fine.ts';\n"],
      ['src/core/photo/bad7.ts', "export const bad = () => console.log('x');\n"],
    ] as const;
    const found = seeded(wrong, lint);
    expect(found.code).not.toBe(0);
    for (const [path] of wrong) expect(found.said).toContain(`${path}:1:`);
  });
});
