import { useEffect, useState } from 'react';
import { host } from '../host/currentHost.ts';
import { measuredAsTaken } from './measuredAsTaken.ts';
import { usePiece } from './pieceStore.ts';
import type { MeasuredBeat } from './replan.ts';

/** The beat of the newest check that measured one; null where none has. */
export function useMeasuredBeat(): MeasuredBeat | null {
  const key = usePiece((state) => state.key);
  const [beat, setBeat] = useState<MeasuredBeat | null>(null);
  useEffect(() => {
    setBeat(null);
    if (key === null) return;
    let gone = false;
    void host()
      .call('listChecks', { key })
      .then((answer) => {
        if (gone || !answer.ok) return;
        const withBeat = answer.value.result.filter((check) => check.passMm !== null);
        const newest = measuredAsTaken(withBeat).at(-1);
        if (newest && newest.passMm !== null) setBeat({ pass: newest.passMm, sigma: newest.passSigmaMm ?? 0 });
      });
    return () => {
      gone = true;
    };
  }, [key]);
  return beat;
}

/** Whether a measured beat differs from the planned one by more than twice its give or take, and by what can be shown. */
export const beatDiffers = (beat: MeasuredBeat | null, planned: number): beat is MeasuredBeat =>
  beat !== null && Math.abs(beat.pass - planned) > Math.max(0.005, 2 * beat.sigma);
