import { create } from 'zustand';
import type { OpenedPiece } from '../../core/contract/hostApi.ts';
import type { Problem } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Progress } from '../../core/model/progress.ts';
import { host } from '../host/currentHost.ts';

interface PieceState {
  readonly key: string | null;
  readonly revision: number;
  readonly piece: Piece | null;
  readonly progress: Progress | null;
  /** The check, by its number, whose count was taken over, and what was counted before; null once the hand counts on. */
  readonly countedByCheck: { readonly check: number; readonly before: Progress | null } | null;
  readonly readOnly: string | null;
  readonly sample: boolean;
  readonly past: readonly Piece[];
  readonly future: readonly Piece[];
  /** Changes with the same name, one after another, are undone as one: a drag, or typing in one field. */
  readonly gathering: string | null;
  /** Why the last change is not on disk; null when it is, or is on its way. */
  readonly notSaved: Problem | null;
  readonly open: (opened: OpenedPiece) => void;
  readonly close: () => void;
  /** @param gather name of a run of changes that is one step to undo, or null for a step of its own. */
  readonly change: (update: (piece: Piece) => Piece, gather?: string | null) => void;
  readonly endGathering: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly setProgress: (progress: Progress) => void;
  readonly saveNow: () => Promise<void>;
}

const SAVE_DELAY_MS = 400;
/** After such a pause the same kind of change is a new step to undo. A drag lasts until it is let go. */
const RUN_PAUSE_MS = 700;
let changedAt = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let saving: Promise<void> | null = null;
/** The piece as it last went to disk: what differs from it is still to be saved. */
let savedPiece: Piece | null = null;

export const usePiece = create<PieceState>((set, get) => {
  const saveLater = () => {
    clearTimeout(timer);
    timer = setTimeout(() => void get().saveNow(), SAVE_DELAY_MS);
  };
  const closed = {
    key: null,
    revision: 0,
    piece: null,
    progress: null,
    countedByCheck: null,
    readOnly: null,
    sample: false,
    past: [],
    future: [],
    gathering: null,
    notSaved: null,
  };
  return {
    ...closed,
    open: (opened) => {
      savedPiece = opened.piece;
      set({
        ...closed,
        key: opened.key,
        revision: opened.revision,
        piece: opened.piece,
        progress: opened.progress,
        readOnly: opened.readOnly,
        sample: opened.sample,
      });
    },
    close: () => {
      const { key, saveNow } = get();
      if (key === null) return;
      void saveNow().then(() => host().call('closePiece', { key }));
      set(closed);
    },
    change: (update, gather = null) => {
      const { piece, past, gathering, readOnly } = get();
      if (piece === null || readOnly !== null) return;
      const next = update(piece);
      if (next === piece) return;
      const now = performance.now();
      const paused = gather !== 'drag' && now - changedAt > RUN_PAUSE_MS;
      changedAt = now;
      const sameRun = gather !== null && gather === gathering && !paused;
      set({ piece: next, past: sameRun ? past : [...past, piece], future: [], gathering: gather });
      saveLater();
    },
    endGathering: () => set({ gathering: null }),
    undo: () => {
      const { piece, past, future } = get();
      const before = past.at(-1);
      if (piece === null || before === undefined) return;
      set({ piece: before, past: past.slice(0, -1), future: [piece, ...future], gathering: null });
      saveLater();
    },
    redo: () => {
      const { piece, past, future } = get();
      const after = future[0];
      if (piece === null || after === undefined) return;
      set({ piece: after, past: [...past, piece], future: future.slice(1), gathering: null });
      saveLater();
    },
    setProgress: (progress) => {
      const { key } = get();
      set({ progress });
      if (key === null) return;
      void host()
        .call('saveProgress', { key, progress })
        .then((answer) => {
          if (get().key === key) set({ notSaved: answer.ok ? null : answer.problem });
        });
    },
    saveNow: async () => {
      clearTimeout(timer);
      // One save at a time: the revision each needs is the answer to the one before.
      while (saving !== null) await saving;
      const { key, revision, piece, readOnly } = get();
      if (key === null || piece === null || piece === savedPiece || readOnly !== null) return;
      saving = host()
        .call('savePiece', { key, revision, piece })
        .then((answer) => {
          saving = null;
          if (get().key !== key) return;
          if (answer.ok) {
            savedPiece = piece;
            set({ revision: answer.value.result.revision, notSaved: null });
          } else {
            set({ notSaved: answer.problem });
          }
        });
      await saving;
    },
  };
});
