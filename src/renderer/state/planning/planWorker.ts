import { chartFidelity } from '../../../core/chart/edgeErrors.ts';
import { makeChart, type SteppedChart } from '../../../core/chart/makeChart.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { blocksAnew } from '../../../core/plan/blocksAnew.ts';
import { planPiece } from '../../../core/plan/planPiece.ts';
import { cellImage } from '../../canvas/cellImage.ts';
import { standingRuns, steppedEdge } from '../../canvas/steppedEdge.ts';
import type { PlanningAnswer, Question } from './questions.ts';
import { receivePiece } from './sendPiece.ts';

/*
 * Works out charts and whole plans away from the page, so that neither a drag nor typing ever waits. One question at a
 * time; the page keeps back all but the newest.
 */
const port = self as unknown as {
  onmessage: ((event: MessageEvent<Question>) => void) | null;
  postMessage: (answer: PlanningAnswer, handOver?: readonly Transferable[]) => void;
};
let shapes: Piece['shapes'] = [];
let charted: { readonly of: Piece['shapes']; readonly rest: string; readonly stepped: SteppedChart } | null = null;
let errorsDue: ReturnType<typeof setTimeout> | undefined;

port.onmessage = ({ data: question }) => {
  clearTimeout(errorsDue);
  const piece = receivePiece(question.piece, shapes);
  shapes = piece.shapes;
  try {
    if (question.kind === 'plan') {
      const plan = planPiece(piece);
      port.postMessage({ kind: 'plan', number: question.number, plan, anew: blocksAnew(piece, plan.blocks) });
      return;
    }
    const stepped = chartFor(piece);
    const { chart } = stepped;
    const place = piece.shapes.findIndex((shape) => shape.id === question.shape);
    const { ends, passes, pitch, passHeight } = chart;
    const colours = piece.yarns.map((yarn) => yarn.colour);
    const picture = cellImage(chart, colours).transferToImageBitmap();
    const edge = place < 0 ? new Int32Array(0) : steppedEdge(chart, place + 1);
    const runs = place < 0 ? [] : standingRuns(chart, place + 1);
    const grid = { ends, passes, pitch, passHeight };
    port.postMessage({ kind: 'chart', number: question.number, grid, picture, edge, runs }, [picture, edge.buffer]);
    // A newer question clears this before it begins: the line follows the hand first, the figures when there is time.
    errorsDue = setTimeout(() => {
      port.postMessage({ kind: 'errors', number: question.number, edges: chartFidelity(piece, stepped).edges });
    }, 0);
  } catch (trouble) {
    port.postMessage({ kind: 'trouble', number: question.number, message: String(trouble) });
  }
};

/** The chart; the last one again when only the choice of a shape changed. */
function chartFor(piece: Piece): SteppedChart {
  const rest = JSON.stringify([piece.cloth, piece.warp, piece.loom, piece.yarns]);
  const same =
    charted !== null &&
    charted.rest === rest &&
    charted.of.length === piece.shapes.length &&
    charted.of.every((shape, index) => shape === piece.shapes[index]);
  if (same && charted !== null) return charted.stepped;
  const stepped = makeChart(piece);
  charted = { of: piece.shapes, rest, stepped };
  return stepped;
}
