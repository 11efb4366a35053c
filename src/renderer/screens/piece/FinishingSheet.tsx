import { gramsInWords, lengthInWords } from '../../../core/model/lengthWords.ts';
import { numberInWords } from '../../../core/model/numberWords.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Verdict } from '../../../core/model/verdict.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { Sign } from '../../parts/Sign.tsx';
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
  const { hanging, materials } = plan;
  const length = (value: number) => lengthInWords(value, piece.units);
  const { hours } = materials;
  const parts = [
    [words.hoursOf.warping, hours.warping],
    [words.hoursOf.weaving, hours.weaving],
    [words.hoursOf.rest, hours.starts + hours.twining + hours.finishing],
  ] as const;
  return (
    <SheetDialog title={words.finishing} onClose={onClose} place="wide">
      <h3>{words.toBuy}</h3>
      <table className="drawing-table buying">
        <tbody>
          {plan.shopping.map((line) => (
            <tr key={`${line.item} ${line.amount}`}>
              <th scope="row">{line.item}</th>
              <td>
                <strong>{line.amount}</strong>
                {line.note !== '' && <span className="second"> {line.note}</span>}
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
        <strong>{words.hoursAbout(numberInWords(Math.max(1, Math.round(hours.total))))}</strong>{' '}
        {parts.map(([say, value]) => say(numberInWords(Math.max(1, Math.round(value))))).join(', ')}.
      </p>
      <h3>{words.hang}</h3>
      <ul className="finishing-facts">
        <Fact verdict={hanging.dowel.verdict} />
        <li>{words.loops(hanging.loopGroups)}</li>
        <li>{words.cord(length(hanging.cord.length), length(hanging.cord.rise))}</li>
        <Fact verdict={hanging.fringe.verdict} />
        <li>{words.load(gramsInWords(hanging.load))}</li>
        {hanging.cautions.map((caution) => (
          <Caution key={caution} words={caution} />
        ))}
      </ul>
      <h3>{words.finishingSteps}</h3>
      <ol className="finishing-steps">
        {plan.finishing.map(({ step, caution }) => (
          <li key={step}>
            {step}
            {caution !== null && <span className="second">{caution}</span>}
          </li>
        ))}
      </ol>
    </SheetDialog>
  );
}

function Fact({ verdict }: { readonly verdict: Verdict }) {
  return (
    <li className={verdict.remedy === null ? undefined : 'is-marked'}>
      {verdict.remedy !== null && <Sign name="mend" size={20} />}
      <span>
        {verdict.sentence} <span className="second">{verdict.why}</span> {verdict.remedy}
      </span>
    </li>
  );
}

const Caution = ({ words }: { readonly words: string }) => (
  <li className="is-marked">
    <Sign name="mend" size={20} />
    <span>{words}</span>
  </li>
);
