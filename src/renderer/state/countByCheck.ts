import { usePiece } from './pieceStore.ts';
import { countTurns, type Work } from './useWork.ts';

/** Counts up to where a check shows the cloth to stand; it can be taken back until turns are counted by hand. */
export function countByCheck(work: Pick<Work, 'turns' | 'plan'>, turnsDone: number, check: number): void {
  const before = usePiece.getState().progress;
  countTurns(work, turnsDone);
  usePiece.setState({ countedByCheck: { check, before } });
}

/** The count as it was before a check's was taken over; what was ticked of finishing since then stays ticked. */
export function takeBackCount(): void {
  const { countedByCheck, progress, setProgress } = usePiece.getState();
  if (countedByCheck === null) return;
  const { passesDone, planFingerprint } = countedByCheck.before ?? { passesDone: 0, planFingerprint: '' };
  usePiece.setState({ countedByCheck: null });
  setProgress({ passesDone, planFingerprint, finished: progress?.finished ?? [], at: new Date().toISOString() });
}
