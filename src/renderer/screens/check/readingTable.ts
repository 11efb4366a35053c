import type { LoomReading } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import type { TableRows } from '../../parts/DrawingTable.tsx';
import type { Words } from '../../words/en.ts';
import { rowFigure } from '../../words/figures.ts';
import { heightSaid } from '../../words/heights.ts';
import { tell } from '../../words/telling.ts';

import { spread } from './probe.ts';

/** The rows behind the photograph: the edges by height from the foot up, then the fell end by end. */
export function readingTable(
  reading: LoomReading,
  edges: PlannedSelvedges,
  units: LengthUnits,
  words: Words['check'],
): TableRows {
  const edge = (row: LoomReading['selvedge'][number], side: 'left' | 'right') => {
    const at = row[side];
    if (at === null) return words.notSeen;
    return rowFigure({ ...at, value: (at.value - edges[side]) * (side === 'left' ? -1 : 1) }, 'across', units);
  };
  return {
    name: words.tableName,
    columns: [words.tablePlace, words.edges.left, words.edges.right, words.tableFell],
    rows: [
      ...reading.selvedge
        .filter((row) => row.left !== null || row.right !== null)
        .map((row) => [heightSaid(row.y, units, 'planned', words), edge(row, 'left'), edge(row, 'right'), '']),
      ...reading.ends.map((end) => [
        words.tableEnd(end.index + 1),
        '',
        '',
        end.fell === null
          ? `${words.notSeen}${end.why === null ? '' : `: ${tell(end.why)}`}`
          : words.probeHeight(heightSaid(end.fell.value, units, 'edge', words), spread(end.fell.sigma, units)),
      ]),
    ],
  };
}
