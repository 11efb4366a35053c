import { useMemo, useState } from 'react';
import { turnShown } from '../../../core/report/turnShown.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useNewestCheck } from '../../state/useNewestCheck.ts';
import { countTurns, type Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';

/** Where the newest check shows more woven than is ticked: says so, and counts up to there when asked. */
export function ShownByCheck({ work }: { readonly work: Work }) {
  const { order: words } = useWords();
  const readOnly = usePiece((state) => state.readOnly);
  const newest = useNewestCheck();
  const { turns, plan } = work;
  const shown = useMemo(
    () => (newest === null ? null : turnShown(newest.record.reading, turns, plan.blocks, plan.chart.ends)),
    [newest, turns, plan],
  );
  /** Turns that were ticked before the check's were taken over, and which those were. */
  const [before, setBefore] = useState<{ readonly turn: number; readonly byCheck: number } | null>(null);
  if (newest === null || shown === null) return null;
  if (before !== null && work.turn === before.byCheck) {
    return (
      <p role="status" className="order-changed">
        {words.countedByCheck(newest.number)}{' '}
        <QuietButton
          onPress={() => {
            countTurns(work, before.turn);
            setBefore(null);
          }}
        >
          {words.countTakenBack}
        </QuietButton>
      </p>
    );
  }
  if (shown.kind === 'other-order') {
    return work.turn === 0 ? (
      <p role="status" className="order-changed">
        {words.checkShowsOtherOrder(newest.number)}
      </p>
    ) : null;
  }
  if (work.turn >= shown.least) return null;
  const block = turns[shown.turns]?.block;
  const place =
    block === undefined
      ? null
      : { block: block + 1, turn: turns.slice(0, shown.turns).filter((turn) => turn.block === block).length + 1 };
  return (
    <p role="status" className="order-changed">
      <strong>{words.checkShowsMore(newest.number, place, shown.sigmaTurns)}</strong>{' '}
      {readOnly === null && (
        <QuietButton
          onPress={() => {
            countTurns(work, shown.turns);
            setBefore({ turn: work.turn, byCheck: shown.turns });
          }}
        >
          {words.countFromThere}
        </QuietButton>
      )}
    </p>
  );
}
