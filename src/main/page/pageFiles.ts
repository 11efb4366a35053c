import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** One file of the page, as it is sent. */
export interface PageFile {
  readonly type: string;
  readonly path: string;
}

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
  woff2: 'font/woff2',
  woff: 'font/woff',
  wasm: 'application/wasm',
  txt: 'text/plain; charset=utf-8',
};

/**
 * The page's files by web path, looked up once at the start. A request is answered from this list alone: no path that
 * a request brings is ever joined to a folder.
 */
export function listPageFiles(folder: string): ReadonlyMap<string, PageFile> {
  const files = new Map<string, PageFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const type = types[entry.name.split('.').at(-1) ?? ''];
    if (type !== undefined) files.set(`/${relative(folder, path).split(sep).join('/')}`, { type, path });
  }
  return files;
}

export const readPageFile = (file: PageFile): Buffer => readFileSync(file.path);
