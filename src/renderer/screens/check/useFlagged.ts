import { useEffect } from 'react';
import { usePiece } from '../../state/pieceStore.ts';
import type { ScreenName } from '../../state/shellStore.ts';
import { useChecks } from './checkStore.ts';

const none: readonly ScreenName[] = [];
const check: readonly ScreenName[] = ['check'];

/**
 * Screens the bar marks as waiting: the loom check, while the newest kept check of the open piece has a flag not yet put
 * aside. The list is read as soon as a piece is open, so that the mark is there on whatever screen one is.
 */
export function useFlagged(): readonly ScreenName[] {
  const key = usePiece((state) => state.key);
  useEffect(() => {
    if (key !== null) void useChecks.getState().load();
  }, [key]);
  return useChecks(({ summaries, summariesOf }) =>
    summariesOf === key && (summaries.at(-1)?.flags.length ?? 0) > 0 ? check : none,
  );
}
