import { usePiece } from './pieceStore.ts';

/** Ticks a step of finishing off, or takes the tick back; kept at once, with the progress at the loom. */
export function tickFinished(step: string, done: boolean): void {
  const { progress, setProgress } = usePiece.getState();
  const before = progress ?? { passesDone: 0, planFingerprint: '', finished: [], at: '' };
  const others = before.finished.filter((each) => each !== step);
  setProgress({ ...before, finished: done ? [...others, step] : others, at: new Date().toISOString() });
}
