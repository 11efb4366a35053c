import { create } from 'zustand';
import type { Problem } from '../../core/model/outcome.ts';
import { openSample } from '../state/pieceActions.ts';
import { usePiece } from '../state/pieceStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { screenNames, useShell } from '../state/shellStore.ts';

interface TourState {
  /** Which of the five screens the tour is at; null when there is none. */
  readonly at: number | null;
  /** Begins on the open piece, else on the sample. */
  readonly begin: () => Promise<Problem | null>;
  readonly goOn: () => void;
  readonly leave: () => void;
}

/** The tour goes with the screens: going elsewhere by the bar goes on with the tour from there. */
export const useTour = create<TourState>((set, get) => ({
  at: null,
  begin: async () => {
    const problem = usePiece.getState().key === null ? await openSample() : null;
    if (problem !== null) return problem;
    useShell.getState().goTo(screenNames[0]);
    set({ at: 0 });
    return null;
  },
  goOn: () => {
    const { at, leave } = get();
    const next = at === null ? undefined : screenNames[at + 1];
    if (at === null || next === undefined) return leave();
    useShell.getState().goTo(next);
    set({ at: at + 1 });
  },
  leave: () => {
    set({ at: null });
    if (!useSettings.getState().settings.tourDone) useSettings.getState().change({ tourDone: true });
  },
}));
