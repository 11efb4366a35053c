import type { RecentPiece } from '../../core/contract/hostApi.ts';
import { shortDate } from './dates.ts';
import type { Words } from './en.ts';

/** What stands beside a piece's name: its checks and when it was changed, and its folder where others have that name. */
export function pieceInWords(piece: RecentPiece, pieces: readonly RecentPiece[], words: Words['shell']): string {
  const alike = pieces.some((other) => other.key !== piece.key && other.name === piece.name);
  const said = [words.checks(piece.checks), shortDate(piece.changed)];
  return (alike ? [piece.folder, ...said] : said).join(' · ');
}
