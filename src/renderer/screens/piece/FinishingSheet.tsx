import { countSaid, lengthSaid } from '../../words/figures.ts';
import '../../parts/figuresTable.css';
import type { Piece } from '../../../core/model/piece.ts';
import type { Verdict } from '../../../core/model/verdict.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { tickFinished } from '../../state/tickFinished.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';

interface FinishingSheetProps {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly onPrint: () => void;
  readonly onClose: () => void;
}

/** What to buy, how the piece hangs, and the way from the last pass to the wall. */
export function FinishingSheet({ piece, plan, onPrint, onClose }: FinishingSheetProps) {
  const words = useWords().piece;
  const tell = useTell();
  const { hanging, materials } = plan;
  const readOnly = usePiece((state) => state.readOnly);
  const finished = usePiece((state) => state.progress?.finished) ?? [];
  const length = (value: number) => lengthSaid(value, piece.units);
  const { hours } = materials;
  // To the half hour, and the sum of what is shown: nobody knows it better.
  const parts = [
    [words.hoursOf.warping, halves(hours.warping)],
    [words.hoursOf.weaving, halves(hours.weaving)],
    [words.hoursOf.rest, halves(hours.starts + hours.twining + hours.finishing)],
  ] as const;
  const say = (count: number) => countSaid(count, words.hour, words.hoursWord);
  return (
    <SheetDialog title={words.finishing} onClose={onClose} place="wide">
      <h3>{words.toBuy}</h3>
      <table className="figures-table buying">
        <tbody>
          {plan.shopping.map((line) => (
            <tr key={`${line.item} ${line.amount}`}>
              <th scope="row">{tell(line.item)}</th>
              <td>
                <strong>{tell(line.amount)}</strong>
                {line.note !== '' && <span className="second"> {tell(line.note)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="sheet-action">
        <SecondButton action={{ words: words.printFinishing, sign: 'print', onPress: onPrint }} />
      </p>
      <h3>{words.hours}</h3>
      <p>
        <strong>{words.hoursAbout(say(parts.reduce((sum, [, value]) => sum + value, 0)))}</strong>{' '}
        {parts.map(([part, value]) => part(say(value))).join(', ')}.
      </p>
      <h3>{words.hang}</h3>
      <ul className="finishing-facts">
        <Fact verdict={hanging.dowel.verdict} />
        <li>{words.loops(hanging.loopGroups)}</li>
        <li>{words.cord(length(hanging.cord.length), length(hanging.cord.rise))}</li>
        <Fact verdict={hanging.fringe.verdict} />
      </ul>
      <h3>{words.finishingSteps}</h3>
      <ol className="finishing-steps">
        {plan.finishing.map(({ name, step, caution }) => (
          <li key={name} className={finished.includes(name) ? 'is-done' : undefined}>
            <label>
              <input
                type="checkbox"
                checked={finished.includes(name)}
                disabled={readOnly !== null}
                onChange={(event) => tickFinished(name, event.target.checked)}
              />
              <span>
                {tell(step)}
                {caution !== null && <span className="second">{tell(caution)}</span>}
              </span>
            </label>
          </li>
        ))}
      </ol>
    </SheetDialog>
  );
}

const halves = (hours: number) => Math.max(0.5, Math.round(hours * 2) / 2);

function Fact({ verdict }: { readonly verdict: Verdict }) {
  const tell = useTell();
  return (
    <li className={verdict.remedy === null ? undefined : 'is-marked'}>
      {verdict.remedy !== null && <Sign name="mend" size={20} />}
      <span>
        {tell(verdict.sentence)} <span className="second">{tell(verdict.why)}</span>{' '}
        {verdict.remedy !== null && tell(verdict.remedy)}
      </span>
    </li>
  );
}
