import type { CheckRecord } from '../../core/model/check.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import { planPiece } from '../../core/plan/planPiece.ts';
import { keyGroups } from '../../core/report/keyGroups.ts';
import type { PaperName } from '../../core/report/paper.ts';
import { plannedSelvedges } from '../../core/warp/plannedSelvedges.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { arithmeticSheet } from './arithmeticSheet.ts';
import { cartoonSheet } from './cartoonSheet.ts';
import { finishingSheet } from './finishingSheet.ts';
import { keySheet } from './keySheet.ts';
import { orderSheet } from './orderSheet.ts';
import { reportSheet } from './reportSheet.ts';
import { warpingSheet } from './warpingSheet.ts';

export type SheetName = 'warping' | 'order' | 'cartoon' | 'report' | 'keys' | 'arithmetic' | 'finishing';

export interface SheetRequest {
  readonly piece: Piece;
  readonly sheet: SheetName;
  readonly paper: PaperName;
  readonly language: LanguageName;
  /** Only a report needs these: the check, and its photograph as displayed, as JPEG. */
  readonly check: CheckRecord | null;
  readonly photo: Uint8Array | null;
}

export interface MadeSheet {
  /** For the file, from the piece's name. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file name that every system takes, from the piece's own. */
const fileName = (piece: Piece, sheet: SheetName): string => {
  const plain = piece.name
    .normalize('NFKD')
    .replaceAll(/[\u0300-\u036f]/g, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60);
  return `${plain || 'piece'}-${sheet}.pdf`;
};

/** Any of the printed sheets. */
export async function makeSheet(request: SheetRequest): Promise<Outcome<MadeSheet, 'check-needed'>> {
  const { piece, sheet, paper, language, check, photo } = request;
  const made = async (): Promise<Uint8Array | null> => {
    switch (sheet) {
      case 'warping':
        return warpingSheet(piece, planPiece(piece).marks, paper, language);
      case 'cartoon':
        return cartoonSheet(piece, planPiece(piece).chart, paper, language);
      case 'order':
        return orderSheet(piece, planPiece(piece), paper, language);
      case 'arithmetic':
        return arithmeticSheet(piece, planPiece(piece).materials.arithmetic, paper, language);
      case 'finishing':
        return finishingSheet(piece, planPiece(piece), paper, language);
      case 'keys':
        return keySheet(piece, keyGroups, paper, language);
      case 'report': {
        if (check === null) return null;
        const planned = plannedSelvedges(piece, check.reading.selvedge);
        return reportSheet({ piece, check, planned, photo, paper, language });
      }
    }
  };
  const bytes = await made();
  if (bytes === null) {
    return failure('check-needed', 'A report is made from a check.', 'Choose a check in the record first.');
  }
  return success({ name: fileName(piece, sheet), bytes });
}
