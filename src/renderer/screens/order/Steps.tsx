import { type StepRun, stepRuns, type ToldStep } from '../../../core/report/stepRuns.ts';
import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';

const MOST_SHOWN = 40;

/** The steps of a block: turns over so many ends, then the move, and on; those that repeat once, with how often. */
export function Steps({ work, index }: { readonly work: Work; readonly index: number }) {
  // The block's own count: where it rises with others, the bench says how they alternate.
  const runs = stepRuns(work.turns.filter((turn) => turn.block === index));
  const shown: StepRun[] = [];
  for (let steps = 0; shown.length < runs.length; ) {
    steps += runs[shown.length]!.steps.length;
    if (steps > MOST_SHOWN) break;
    shown.push(runs[shown.length]!);
  }
  return (
    <ol className="steps">
      {shown.map(({ steps, times }, at) =>
        times === 1 ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has no other name than its place in the block.
          <Step key={at} step={steps[0]!} />
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above.
          <li key={at} className="step-repeat">
            <ol className="steps">
              {steps.map((step, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above.
                <Step key={place} step={step} />
              ))}
            </ol>
            <span className="step-times">× {times}</span>
          </li>
        ),
      )}
      {runs.length > shown.length && <li>…</li>}
    </ol>
  );
}

function Step({ step }: { readonly step: ToldStep }) {
  const words = useWords().order;
  const move = (moves: { readonly left: number; readonly right: number }) => {
    const say = (ends: number) => (ends < 0 ? words.inBy(-ends) : words.outBy(ends));
    if (moves.left === moves.right) return words.bothSides(say(moves.left));
    const parts = [];
    if (moves.left !== 0) parts.push(words.leftSide(say(moves.left)));
    if (moves.right !== 0) parts.push(words.rightSide(say(moves.right)));
    return parts.join(', ');
  };
  const said = words.turns(step.turns).split(' ');
  return (
    <li>
      <span className="step-count">{said.slice(0, -1).join(' ')}</span>
      <span className="step-over">
        {said.at(-1)}
        <br />
        {words.ends(step.right - step.left + 1)}
      </span>
      {step.moves && <span className="step-move">{move(step.moves)}</span>}
    </li>
  );
}
