import { host } from '../../host/currentHost.ts';
import { words } from '../../words/useWords.ts';

/** Shows the piece's folder; where no window can be opened, says where it lies. */
export async function revealFolder(key: string): Promise<string> {
  const answer = await host().call('revealPiece', { key });
  if (!answer.ok) return `${answer.problem.sentence} ${answer.problem.remedy}`;
  return words().record.folderAt(answer.value.result.path);
}
