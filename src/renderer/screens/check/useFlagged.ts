import type { ScreenName } from '../../state/shellStore.ts';
import { useChecks } from './checkStore.ts';

const none: readonly ScreenName[] = [];
const check: readonly ScreenName[] = ['check'];

/** Screens the bar marks as waiting: the loom check, while its newest kept check has a flag not yet put aside. */
export const useFlagged = (): readonly ScreenName[] =>
  useChecks((state) => ((state.summaries.at(-1)?.flags.length ?? 0) > 0 ? check : none));
