import type { CallParams } from '../../core/contract/hostApi.ts';
import type { Problem } from '../../core/model/outcome.ts';
import { host } from '../host/currentHost.ts';
import { handOver } from './pieceActions.ts';
import { usePiece } from './pieceStore.ts';
import { useShell } from './shellStore.ts';

export type SheetName = CallParams<'makeSheet'>['sheet'];

/** Letter paper where inches are used, A4 elsewhere. */
const paperFor = (units: 'mm' | 'in'): 'a4' | 'letter' => (units === 'in' ? 'letter' : 'a4');

/** Makes a printed sheet of the piece as it stands and hands it over as a PDF. */
export async function makeSheet(key: string, sheet: SheetName, check: string | null): Promise<Problem | null> {
  await usePiece.getState().saveNow();
  const paper = paperFor(usePiece.getState().piece?.units ?? 'mm');
  const answer = await host().call('makeSheet', { key, sheet, paper, check });
  if (!answer.ok) {
    useShell.getState().say(`${answer.problem.sentence} ${answer.problem.remedy}`);
    return answer.problem;
  }
  return handOver(answer.value.result.name, answer.value.bytes, 'application/pdf');
}
