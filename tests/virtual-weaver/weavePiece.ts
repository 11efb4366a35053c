import type { Piece } from '../../src/core/model/piece.ts';
import { planJson } from '../../src/core/report/planJson.ts';
import { weavePlan } from './weavePlan.ts';

export interface PieceResult {
  /** Null when the cloth and the rows came out as planned, from the lists and from the words alone. */
  readonly trouble: string | null;
  readonly refused: boolean;
  /** The printed document, parsed again. */
  readonly document: unknown;
  readonly blocks: number;
  readonly passes: number;
  readonly cells: number;
}

/** Plans a piece, prints the plan, and weaves what was printed twice: from its lists, then from its sentences. */
export function weavePiece(piece: Piece): PieceResult {
  const document: unknown = JSON.parse(planJson(piece));
  const reports = [weavePlan(document), weavePlan(document, 'words')];
  const wrong = reports.find((report) => report.refusal !== null || report.mismatches.length > 0);
  const [first] = reports;
  return {
    trouble: wrong === undefined ? null : JSON.stringify(wrong.refusal ?? wrong.mismatches[0]),
    refused: reports.some((report) => report.refusal !== null),
    document,
    blocks: first?.blocks ?? 0,
    passes: first?.passesWoven ?? 0,
    cells: first?.cellsWoven ?? 0,
  };
}
