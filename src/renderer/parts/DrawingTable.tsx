import { useWords } from '../words/useWords.ts';
import { FiguresTable } from './FiguresTable.tsx';
import { SheetDialog } from './SheetDialog.tsx';

export interface TableRows {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The same rows a drawing shows, read out: every drawing has one behind it, by the key T. */
export function DrawingTable({ table, onClose }: { readonly table: TableRows; readonly onClose: () => void }) {
  const words = useWords().shell;
  return (
    <SheetDialog title={words.tableOf(table.name)} onClose={onClose} place="wide">
      <FiguresTable columns={table.columns}>
        {table.rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other name and never move.
          <tr key={index}>
            {row.map((cell, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: as above.
              <td key={column}>{cell}</td>
            ))}
          </tr>
        ))}
      </FiguresTable>
    </SheetDialog>
  );
}
