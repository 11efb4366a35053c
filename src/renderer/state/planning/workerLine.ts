import type { Piece, Shape } from '../../../core/model/piece.ts';
import type { PlanningAnswer, Question } from './questions.ts';
import { sendPiece } from './sendPiece.ts';

interface Wanted {
  readonly piece: Piece;
  readonly shape: string | null;
}

/** One worker that is asked one question at a time; of those that come meanwhile only the newest is kept. */
export interface WorkerLine {
  readonly ask: (piece: Piece, shape: string | null) => void;
  /** Ends the worker; nothing is answered any more. */
  readonly close: () => void;
}

/** @param take what to do with an answer, and what was asked. */
export function openLine(
  kind: Question['kind'],
  take: (answer: PlanningAnswer, piece: Piece, shape: string | null) => void,
): WorkerLine {
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' });
  let number = 0;
  let asked: Wanted | null = null;
  let busy = false;
  let waiting: Wanted | null = null;
  let known: readonly Shape[] = [];
  const send = (wanted: Wanted) => {
    number++;
    busy = true;
    asked = wanted;
    const question: Question = { number, kind, piece: sendPiece(wanted.piece, known), shape: wanted.shape };
    known = wanted.piece.shapes;
    worker.postMessage(question);
  };
  worker.onmessage = ({ data: answer }: MessageEvent<PlanningAnswer>) => {
    if (answer.number === number && asked !== null) take(answer, asked.piece, asked.shape);
    if (answer.kind === 'errors') return;
    busy = false;
    if (waiting === null) return;
    const next = waiting;
    waiting = null;
    send(next);
  };
  worker.onerror = (event) => {
    if (asked !== null) take({ kind: 'trouble', number, message: event.message }, asked.piece, asked.shape);
    busy = false;
  };
  return {
    ask: (piece, shape) => {
      const wanted = { piece, shape };
      if (busy) waiting = wanted;
      else send(wanted);
    },
    close: () => worker.terminate(),
  };
}
