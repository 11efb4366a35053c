import type { Arithmetic } from '../../core/model/plan.ts';
import { SheetDialog } from './SheetDialog.tsx';
import './arithmeticSheet.css';

interface ArithmeticSheetProps {
  readonly sums: readonly Arithmetic[];
  readonly title: string;
  readonly onClose: () => void;
}

/** The working behind the figures, line by line. */
export function ArithmeticSheet({ sums, title, onClose }: ArithmeticSheetProps) {
  return (
    <SheetDialog title={title} onClose={onClose} place="wide">
      {sums.map((sum) => (
        <section key={sum.title}>
          <h3>{sum.title}</h3>
          <table className="arithmetic">
            <tbody>
              {sum.lines.map((line) => (
                <tr key={line.label}>
                  <th scope="row">{line.label}</th>
                  <td>{line.working}</td>
                  <td className="arithmetic-result">{line.result}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
    </SheetDialog>
  );
}
