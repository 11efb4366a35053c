import { compareReading } from '../../../core/compare/compareReading.ts';
import type { Problem } from '../../../core/model/outcome.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { host } from '../../host/currentHost.ts';
import { newJob } from '../../state/newJob.ts';
import { handOver } from '../../state/pieceActions.ts';
import { shortDate } from '../../words/dates.ts';
import type { Words } from '../../words/en.ts';
import { checkSentence } from './checkSentence.ts';
import type { Look } from './checkStore.ts';
import { shareFrame, sharePicture } from './sharePicture.ts';

/** A file name that every system takes. */
const plainName = (name: string) =>
  name
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'piece';

/** Draws the picture to share and gives it to the weaver as a file. @param number the check's, for the name. */
export async function handOverPicture(
  key: string,
  piece: Piece,
  look: Look,
  number: number,
  words: Words,
): Promise<Problem | null> {
  const frame = shareFrame(piece, look);
  const params = {
    key,
    job: newJob('picture'),
    hash: look.hash,
    draft: look.draft,
    check: look.kept?.id ?? null,
    ...frame,
  };
  const answer = await host().call('frontOnImage', params);
  if (!answer.ok) return answer.problem;
  const { bytes, result } = answer.value;
  if (bytes === null) return null;
  const when = look.kept === null ? '' : ` · ${shortDate(look.kept.taken ?? look.kept.kept)}`;
  const dismissed = look.kept?.dismissed.map((each) => each.flag) ?? [];
  const { units, making, name } = piece;
  const comparison = compareReading(look.reading, piece);
  const made = await sharePicture(new Blob([bytes.slice()], { type: result.type }), frame, piece, look, {
    title: `${name} · ${words.record.checkNumber(number)}${when}`,
    sentence: checkSentence(look.reading, comparison, dismissed, making.allowance, units, words.check),
    words: words.check,
  });
  if (made === null) return null;
  return handOver(`${plainName(name)}-${number}.jpg`, new Uint8Array(await made.arrayBuffer()), 'image/jpeg');
}
