import { create } from 'zustand';

/** The five words of the bar. Bench is a way of being in the order of work, Record holds kept checks. */
export const screenNames = ['piece', 'cartoon', 'order', 'check', 'record'] as const;
export type ScreenName = (typeof screenNames)[number];
/** Fields of Piece a photograph may show to be wrong. */
export type PieceField = 'ends' | 'notchPitch' | 'openingWidth' | 'openingHeight';
/**
 * What a screen is to open as it comes: the sheet of re-planning on the order of work, with the height of a pass it is
 * to begin with, mm, null for the one the newest check measured; or the sheet of Piece where a field is changed.
 */
export type Opening = { readonly replan: number | null } | { readonly field: PieceField };
export type Sheet = 'words-and-keys' | 'find' | 'pieces' | null;

interface ShellState {
  readonly screen: ScreenName;
  /** What lies over the screen, if anything. */
  readonly sheet: Sheet;
  /** Bench view: bar and footer are put away. */
  readonly bare: boolean;
  /** What the live region says; the count makes the same words said twice be heard twice. */
  readonly said: { readonly words: string; readonly count: number };
  readonly opening: Opening | null;
  /** What was asked for and can't be done yet, and what it needs: told in the footer until the weaver goes on. */
  readonly needed: string | null;
  readonly goTo: (screen: ScreenName, opening?: Opening) => void;
  readonly openSheet: (sheet: Sheet) => void;
  readonly setBare: (bare: boolean) => void;
  readonly say: (words: string) => void;
  readonly need: (words: string | null) => void;
}

export const useShell = create<ShellState>((set, get) => ({
  screen: 'piece',
  sheet: null,
  bare: false,
  said: { words: '', count: 0 },
  opening: null,
  needed: null,
  goTo: (screen, opening) => set({ screen, sheet: null, bare: false, opening: opening ?? null, needed: null }),
  openSheet: (sheet) => set({ sheet }),
  setBare: (bare) => set({ bare, opening: null }),
  say: (words) => set({ said: { words, count: get().said.count + 1 } }),
  need: (words) => {
    set({ needed: words });
    if (words !== null) get().say(words);
  },
}));
