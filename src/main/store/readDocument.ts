import type { Outcome } from '../../core/model/outcome.ts';
import { type DocumentKind, type DocumentTag, type LoadedDocument, loadDocument } from '../../core/project/document.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { DOCUMENT_LIMIT } from './layout.ts';
import type { StorePorts } from './storePorts.ts';

/** Bytes that aren't UTF-8 become a text no reader accepts, rather than one with letters swapped. */
export function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return '';
  }
}

/** Reads one saved record from the disk; the file is never changed by this. */
export async function readDocument<Body>(
  ports: StorePorts,
  kind: DocumentKind<Body>,
  path: string,
): Promise<Outcome<LoadedDocument<Body> & { readonly text: string }, DocumentTag | FileTag>> {
  let text: string;
  try {
    text = textOf(await ports.files.read(path, DOCUMENT_LIMIT));
  } catch (thrown) {
    return fileProblem(thrown, `reading the ${kind.called}`);
  }
  const loaded = loadDocument(kind, text, sha256);
  return loaded.ok ? { ok: true, value: { ...loaded.value, text } } : loaded;
}
