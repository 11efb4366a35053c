import { useEffect, useState } from 'react';
import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { host } from '../../host/currentHost.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { changesBetween } from './changesBetween.ts';
import { type Look, useChecks } from './checkStore.ts';

/** The check kept before this one, if any was measured. */
function useEarlierCheck(look: Look): CheckRecord | null {
  const key = usePiece((state) => state.key);
  const summaries = useChecks((state) => state.summaries);
  const at = look.kept === null ? summaries.length : summaries.findIndex((each) => each.id === look.kept?.id);
  const earlier = summaries.slice(0, Math.max(0, at)).findLast((each) => each.status === 'measured')?.id ?? null;
  const [record, setRecord] = useState<CheckRecord | null>(null);
  useEffect(() => {
    setRecord(null);
    if (key === null || earlier === null) return;
    let wanted = true;
    void host()
      .call('readCheck', { key, id: earlier })
      .then((answer) => {
        if (wanted && answer.ok) setRecord(answer.value.result);
      });
    return () => {
      wanted = false;
    };
  }, [key, earlier]);
  return record;
}

interface SinceLastProps {
  readonly look: Look;
  readonly piece: Piece;
}

/** What changed since the check before; in small windows the Record says it. */
export function SinceLast({ look, piece }: SinceLastProps) {
  const words = useWords().check;
  const earlier = useEarlierCheck(look);
  const summaries = useChecks((state) => state.summaries);
  if (earlier === null) return null;
  const number = summaries.findIndex((each) => each.id === earlier.id) + 1;
  return (
    <div className="since-last">
      <h2>{words.sinceCheck(number)}</h2>
      <p className="second">{changesBetween(earlier.reading, look.reading, piece, words)}</p>
    </div>
  );
}
