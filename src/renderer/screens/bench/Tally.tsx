import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import type { BenchMoment } from './benchMoment.ts';

const MOST_STROKES = 13;

/** A stroke a turn: full when done, hollow now, dotted to come; gathered by step with the width under each. */
export function Tally({ work, moment }: { readonly work: Work; readonly moment: BenchMoment }) {
  const words = useWords().order;
  const groups = [];
  let strokes = 0;
  // The step before this one stays in sight, then as many to come as there is room for.
  const first = work.steps[moment.stepIndex - 1]?.block === moment.block ? moment.stepIndex - 1 : moment.stepIndex;
  for (let index = first; index < work.steps.length && strokes < MOST_STROKES; index++) {
    const step = work.steps[index]!;
    if (step.block !== moment.block) break;
    const nowAt = index === moment.stepIndex ? moment.turnInStep - 1 : index < moment.stepIndex ? step.turns : -1;
    const shown = Math.min(step.turns, Math.max(4, MOST_STROKES - strokes));
    const from = Math.max(0, Math.min(step.turns - shown, nowAt - Math.floor(shown / 2)));
    groups.push({ step, nowAt, from, shown, key: index });
    strokes += shown + 1;
  }
  return (
    <div className="tally" aria-hidden="true">
      {groups.map(({ step, nowAt, from, shown, key }) => (
        <div key={key} className="tally-group">
          <span className="tally-strokes">
            {Array.from({ length: shown }, (_, index) => {
              const turn = from + index;
              const state = turn < nowAt ? 'done' : turn === nowAt ? 'now' : 'to-come';
              return <span key={turn} className={`stroke is-${state}`} />;
            })}
          </span>
          <span className="tally-ends">{words.ends(step.right - step.left + 1)}</span>
        </div>
      ))}
    </div>
  );
}
