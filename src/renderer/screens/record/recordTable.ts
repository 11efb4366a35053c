import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { TableRows } from '../../parts/DrawingTable.tsx';
import type { Words } from '../../words/en.ts';
import { passFigure, rowFigure } from '../../words/figures.ts';
import { heightSaid } from '../../words/heights.ts';
import { fellHeight, trendNames, trendOf } from './trends.ts';

/** Every check's figures, one row each: what the trends draw. */
export function recordTable(
  records: readonly CheckRecord[],
  piece: Piece,
  nameOf: (id: string) => string,
  { record: words, check: checkWords }: Pick<Words, 'record' | 'check'>,
): TableRows {
  const trends = trendNames.map((name) => trendOf(name, records, piece));
  return {
    name: words.tableName,
    columns: [words.tableCheck, words.tableFell, ...trendNames.map((name) => words.trends[name])],
    rows: records.map((record) => {
      const fell = fellHeight(record.reading);
      const figures = trendNames.map((name, index) => {
        const point = trends[index]?.find((each) => each.check === record.id);
        if (point === undefined) return words.notSeen;
        if (name === 'pass') {
          return passFigure(point.measured, piece.units);
        }
        const axis = name === 'halves' ? 'along' : name === 'width' ? 'breadth' : 'across';
        return rowFigure(point.measured, axis, piece.units);
      });
      return [
        nameOf(record.id),
        fell === null ? words.notSeen : heightSaid(fell, piece.units, 'edge', checkWords),
        ...figures,
      ];
    }),
  };
}
