import { useMemo } from 'react';
import { turnShown } from '../../../core/report/turnShown.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { countByCheck, takeBackCount } from '../../state/countByCheck.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useNewestCheck } from '../../state/useNewestCheck.ts';
import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';

/** Where the newest check shows more woven than is ticked: says so, and counts up to there when asked. */
export function ShownByCheck({ work }: { readonly work: Work }) {
  const { order: words } = useWords();
  const { readOnly, countedByCheck: counted } = usePiece();
  const newest = useNewestCheck();
  const { turns, plan } = work;
  const shown = useMemo(
    () => (newest === null ? null : turnShown(newest.record.reading, turns, plan.blocks, plan.chart.ends)),
    [newest, turns, plan],
  );
  const showsMore = shown?.kind === 'moment' && work.turn < shown.least;
  if (counted !== null && !showsMore) {
    return (
      <p role="status" className="order-changed">
        {words.countedByCheck(counted.check)} <QuietButton onPress={takeBackCount}>{words.countTakenBack}</QuietButton>
      </p>
    );
  }
  if (newest === null || shown === null) return null;
  if (shown.kind === 'other-order') {
    return work.turn === 0 ? (
      <p role="status" className="order-changed">
        {words.checkShowsOtherOrder(newest.number)}
      </p>
    ) : null;
  }
  if (!showsMore) return null;
  const block = turns[shown.turns]?.block;
  const place =
    block === undefined
      ? null
      : { block: block + 1, turn: turns.slice(0, shown.turns).filter((turn) => turn.block === block).length + 1 };
  return (
    <p role="status" className="order-changed">
      <strong>{words.checkShowsMore(newest.number, place, shown.sigmaTurns)}</strong>{' '}
      {readOnly === null && (
        <QuietButton onPress={() => countByCheck(work, shown.turns, newest.number)}>{words.countFromThere}</QuietButton>
      )}
    </p>
  );
}
