import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from '@playwright/test';
import { root } from './app.ts';

/**
 * The page with every word of the English words files about a third longer, as other languages would have it. It is
 * built for the test, by each worker for itself, with a language of that kind in place of English; the program itself knows nothing of it.
 */
const built = join(root, '.cache/longer-words', process.env.TEST_WORKER_INDEX ?? '0');

/** Stands in for the words files: the same words, each with letters added. */
const lengthening = (english: string) => `
import { en as plain } from ${JSON.stringify(english)};
const word = (letters) => letters + 'n'.repeat(Math.round(0.3 * letters.length));
const longer = (value) => {
  if (typeof value === 'string') return value.replace(/\\p{L}+/gu, word);
  if (typeof value === 'function') return (...given) => longer(value(...given));
  if (Array.isArray(value)) return value.map(longer);
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, held]) => [name, longer(held)]));
  }
  return value;
};
export const en = longer(plain);
`;

/** Builds it once; takes a few seconds. */
export async function buildLongerWords(): Promise<void> {
  const { build, mergeConfig } = await import('vite');
  const config = (await import(pathToFileURL(join(root, 'electron.vite.config.ts')).href)).default;
  const english = resolve(root, 'src/renderer/words/en.ts');
  const longer = '\0longer-words';
  await build(
    mergeConfig(config.renderer, {
      configFile: false,
      logLevel: 'error',
      build: { outDir: built, emptyOutDir: true, minify: false },
      plugins: [
        {
          name: 'longer-words',
          enforce: 'pre',
          resolveId(source: string, importer: string | undefined) {
            if (!/[\\/]?en\.ts$/.test(source) || importer === undefined || importer === longer) return null;
            return resolve(importer, '..', source) === english ? longer : null;
          },
          load: (id: string) => (id === longer ? lengthening(english) : null),
        },
      ],
    }),
  );
}

/** From here on the page comes with the longer words; what it asks of its host is answered as always. */
export async function useLongerWords(page: Page): Promise<void> {
  await page.route(/\/(?:assets\/.*)?$/, async (route) => {
    const path = new URL(route.request().url()).pathname;
    const body = readFileSync(join(built, path === '/' ? 'index.html' : path));
    const types = {
      js: 'text/javascript',
      css: 'text/css',
      html: 'text/html',
      woff2: 'font/woff2',
      svg: 'image/svg+xml',
    };
    const ending = path === '/' ? 'html' : (path.split('.').at(-1) as keyof typeof types);
    await route.fulfill({ body, contentType: types[ending] ?? 'application/octet-stream' });
  });
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
}
