import { workSteps } from '../../../core/report/workTurns.ts';
import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';

const MOST_SHOWN = 40;

/** The steps of a block: turns over so many ends, then the move, and on. */
export function Steps({ work, index }: { readonly work: Work; readonly index: number }) {
  const words = useWords().order;
  // The block's own count: where it rises with others, the bench says how they alternate.
  const own = work.turns.filter((turn) => turn.block === index);
  const steps = workSteps(own);
  const shown = steps.slice(0, MOST_SHOWN);
  const move = (moves: { readonly left: number; readonly right: number }) => {
    const say = (ends: number) => (ends < 0 ? words.inBy(-ends) : words.outBy(ends));
    if (moves.left === moves.right) return words.bothSides(say(moves.left));
    const parts = [];
    if (moves.left !== 0) parts.push(words.leftSide(say(moves.left)));
    if (moves.right !== 0) parts.push(words.rightSide(say(moves.right)));
    return parts.join(', ');
  };
  const turnsOf = (first: number, count: number) => {
    let passes = 0;
    for (let turn = first; turn < first + count; turn++) passes += own[turn]?.passes ?? 0;
    return passes / 2;
  };
  return (
    <ol className="steps">
      {shown.map((step) => {
        const turns = turnsOf(step.firstTurn, step.turns);
        const said = words.turns(turns).split(' ');
        const word = said.slice(-1);
        const count = said.slice(0, -1).join(' ');
        return (
          <li key={step.firstTurn}>
            <span className="step-count">{count}</span>
            <span className="step-over">
              {word.join(' ')}
              <br />
              {words.ends(step.right - step.left + 1)}
            </span>
            {step.moves && <span className="step-move">{move(step.moves)}</span>}
          </li>
        );
      })}
      {steps.length > shown.length && <li>…</li>}
    </ol>
  );
}
