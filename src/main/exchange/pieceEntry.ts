import { join } from 'node:path';
import { CHECK_NAME, PHOTO_NAME } from '../store/layout.ts';

/** What an entry's name can mean inside a piece. */
export type PieceEntry =
  | { readonly part: 'document'; readonly path: readonly string[] }
  | { readonly part: 'photo'; readonly path: readonly string[]; readonly hash: string }
  | { readonly part: 'folder' }
  | { readonly part: 'ignored' };

const DOCUMENT = /^(?:piece|progress)\.json$|^previous\/piece-\d{8}\.json$/;
const CHECK = /^checks\/(.*)$/;
const PHOTO = /^photos\/(.*)$/;
const FOLDER = /^(?:photos|checks|previous)\/$/;
/** What systems put into zips and folders by themselves, and what a running Plumbweft keeps there. */
const SYSTEM = /(?:^|\/)(?:\.DS_Store|Thumbs\.db|desktop\.ini|\._[^/]*|\.lock|\.[^/]*\.part)$|^__MACOSX\//;

/**
 * Reads an entry's name against the few names a piece has. Everything else is turned away, so a name that leads
 * elsewhere, is a device's or differs only in capitals never reaches the disk.
 * @param name without the folder the whole piece may lie in.
 */
export function readEntryName(name: string): PieceEntry | null {
  if (DOCUMENT.test(name)) return { part: 'document', path: name.split('/') };
  const check = CHECK.exec(name)?.[1];
  if (check !== undefined && CHECK_NAME.test(check)) return { part: 'document', path: ['checks', check] };
  const photo = PHOTO_NAME.exec(PHOTO.exec(name)?.[1] ?? '');
  if (photo) return { part: 'photo', path: ['photos', photo[0]], hash: photo[1]! };
  if (FOLDER.test(name)) return { part: 'folder' };
  if (SYSTEM.test(name)) return { part: 'ignored' };
  return null;
}

/** Where it goes; built from the parts that matched, not from the name that came. */
export const entryPath = (folder: string, path: readonly string[]): string => join(folder, ...path);
