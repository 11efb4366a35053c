import { basename, join } from 'node:path';
import { build } from 'vite';
import { projectRoot } from './pieces.ts';

/** Builds one entry for plain Node, so that many short processes start quickly. @returns the built file. */
export async function bundleForNode(entry: string): Promise<string> {
  const name = basename(entry, '.ts');
  // Inside the project, since packages are found from where a file lies.
  const outDir = join(projectRoot, '.cache/bundles', `${name}-${process.pid}`);
  await build({
    configFile: false,
    root: projectRoot,
    logLevel: 'error',
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: true,
      target: 'node20.19',
      minify: false,
      rollupOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  });
  return join(outDir, `${name}.mjs`);
}
