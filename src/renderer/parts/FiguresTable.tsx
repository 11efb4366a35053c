import type { ReactNode } from 'react';
import './figuresTable.css';

interface FiguresTableProps {
  readonly columns: readonly string[];
  /** Its rows, `tr` each. */
  readonly children: ReactNode;
}

/** A table of figures with a head of column names; every table on screen that has such a head is one of these. */
export function FiguresTable({ columns, children }: FiguresTableProps) {
  return (
    <table className="figures-table figures">
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  );
}
