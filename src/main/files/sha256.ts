import { createHash } from 'node:crypto';
import type { FileLayer } from './fileLayer.ts';

/** SHA-256 as lower-case hex. */
export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

/** Of a file, without holding it whole. */
export async function sha256OfFile(files: FileLayer, path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of files.readPieces(path)) hash.update(piece);
  return hash.digest('hex');
}
