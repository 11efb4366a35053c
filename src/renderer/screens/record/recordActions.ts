import type { Problem } from '../../../core/model/outcome.ts';
import { host } from '../../host/currentHost.ts';
import { handOver } from '../../state/pieceActions.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { words } from '../../words/useWords.ts';

/** The report of a check as PDF, on the paper the weaver's units go with. */
export async function makeReport(key: string, check: string | null): Promise<Problem | null> {
  await usePiece.getState().saveNow();
  const paper = useSettings.getState().settings.units === 'in' ? 'letter' : 'a4';
  const answer = await host().call('makeSheet', { key, sheet: 'report', paper, check });
  if (!answer.ok) return answer.problem;
  return handOver(answer.value.result.name, answer.value.bytes, 'application/pdf');
}

/** Shows the piece's folder; where no window can be opened, says where it lies. */
export async function revealFolder(key: string): Promise<string> {
  const answer = await host().call('revealPiece', { key });
  if (!answer.ok) return `${answer.problem.sentence} ${answer.problem.remedy}`;
  return words().record.folderAt(answer.value.result.path);
}
