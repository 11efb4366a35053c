import type { Arithmetic } from '../../core/model/plan.ts';
import { useTell } from '../words/telling.ts';
import { useWords } from '../words/useWords.ts';
import { SecondButton } from './Actions.tsx';
import { SheetDialog } from './SheetDialog.tsx';
import './arithmeticSheet.css';

interface ArithmeticSheetProps {
  readonly sums: readonly Arithmetic[];
  readonly title: string;
  /** Offered where the sums can be printed. */
  readonly onPrint?: () => void;
  readonly onClose: () => void;
}

/** The working behind the figures, line by line. */
export function ArithmeticSheet({ sums, title, onPrint, onClose }: ArithmeticSheetProps) {
  const words = useWords().order;
  const tell = useTell();
  return (
    <SheetDialog title={title} onClose={onClose} place="wide">
      {sums.map((sum, index) => (
        <section key={sum.title}>
          {/* Read from its head: the only control stands at the foot. */}
          <h3 tabIndex={-1} data-first={index === 0 ? true : undefined}>
            {tell(sum.title)}
          </h3>
          <table className="arithmetic">
            <tbody>
              {sum.lines.map((line) => (
                <tr key={line.label}>
                  <th scope="row">{tell(line.label)}</th>
                  <td>{tell(line.working)}</td>
                  <td className="arithmetic-result">{tell(line.result)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      {onPrint && (
        <p className="sheet-action">
          <SecondButton action={{ words: words.print, sign: 'print', onPress: onPrint }} />
        </p>
      )}
    </SheetDialog>
  );
}
