import { join } from 'node:path';

/** Names inside a piece folder. */
export const layout = {
  piece: (folder: string) => join(folder, 'piece.json'),
  progress: (folder: string) => join(folder, 'progress.json'),
  photos: (folder: string) => join(folder, 'photos'),
  checks: (folder: string) => join(folder, 'checks'),
  previous: (folder: string) => join(folder, 'previous'),
  lock: (folder: string) => join(folder, '.lock'),
  check: (folder: string, id: string) => join(folder, 'checks', `${id}.json`),
  previousPiece: (folder: string, revision: number) =>
    join(folder, 'previous', `piece-${String(revision).padStart(8, '0')}.json`),
};

export const PREVIOUS_NAME = /^piece-(\d{8,})\.json$/;
/** Names that some systems keep for devices, whatever their ending, are nobody's. */
export const CHECK_NAME = /^(?!(?:con|prn|aux|nul|com\d|lpt\d)\.)([a-z0-9-]{1,64})\.json$/;
/** Photographs: the SHA-256 of their bytes, then what kind of file it is. */
export const PHOTO_NAME = /^([0-9a-f]{64})\.(jpg|png|webp|avif|heic)$/;

export const DOCUMENT_LIMIT = 64 * 1024 * 1024;
export const PHOTO_LIMIT = 96 * 1024 * 1024;
