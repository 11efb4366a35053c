import { create } from 'zustand';
import type { CheckSummary, MeasuredPhoto } from '../../../core/contract/hostApi.ts';
import type { CheckRecord, LoomReading } from '../../../core/model/check.ts';
import type { Marks } from '../../../core/model/marks.ts';
import type { Problem } from '../../../core/model/outcome.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Stage } from '../../../core/model/stage.ts';
import { host } from '../../host/currentHost.ts';
import { fileBytes } from '../../host/fileBytes.ts';
import { newJob } from '../../state/newJob.ts';
import { usePiece } from '../../state/pieceStore.ts';

/** What is being looked at: a photograph just measured, or a check that was kept. */
export interface Look {
  readonly hash: string;
  readonly name: string;
  readonly rendered: boolean;
  /** The device it was taken with, where that is known. */
  readonly camera: string | null;
  readonly reading: LoomReading;
  /** Name of the measurement until it is kept; null once kept. */
  readonly draft: string | null;
  readonly kept: CheckRecord | null;
  /** What was marked in it by hand; null when it was measured without. */
  readonly marks: Marks | null;
  /** The piece it was just held against; null for a kept check. */
  readonly against: Piece | null;
}

export interface Job {
  readonly id: string;
  /** The photograph when the piece holds it already; null when it was just handed over. */
  readonly hash: string | null;
  readonly stage: Stage;
  readonly done: number;
  readonly of: number;
}

interface CheckState {
  readonly summaries: readonly CheckSummary[];
  readonly summariesOf: string | null;
  /** The list has been read and, when there is one, its newest check opened. */
  readonly ready: boolean;
  readonly look: Look | null;
  readonly job: Job | null;
  readonly problem: Problem | null;
  /** Why the list couldn't be read. */
  readonly listProblem: Problem | null;
  /** The flag the words and the close look speak of. */
  readonly chosenFlag: number;
  readonly load: () => Promise<void>;
  /** @param camera the device, where the page took the picture itself. */
  readonly measureFile: (file: Blob, name: string, camera?: string | null) => Promise<void>;
  /** A photograph the piece holds already, measured anew. */
  readonly measureKept: (hash: string, name: string, camera?: string | null) => Promise<void>;
  /** The same photograph again, with what was marked in it by hand. */
  readonly measureWithMarks: (marks: Marks) => Promise<void>;
  /**
   * The photograph looked at, with what was marked in it, against the piece as it is now.
   * @param mirrored what was just said of it.
   */
  readonly measureAgain: (mirrored?: boolean) => Promise<void>;
  readonly stop: () => void;
  readonly keep: (note: string) => Promise<CheckRecord | null>;
  readonly openCheck: (id: string) => Promise<void>;
  readonly discard: (id: string) => Promise<void>;
  readonly dismissFlag: (flag: number, reason: string) => Promise<void>;
  readonly chooseFlag: (flag: number) => void;
  readonly letGo: () => void;
}

/** The draft on its way into the piece: a second press must not keep it twice. */
let keeping: string | null = null;

const lookAt = (measured: MeasuredPhoto, marks: Marks | null, against: Piece | null): Look => ({
  hash: measured.photo.hash,
  name: measured.photo.name,
  rendered: measured.photo.rendered,
  camera: measured.photo.camera,
  reading: measured.reading,
  draft: measured.draft,
  kept: null,
  marks,
  against,
});

/** A check as it was kept. */
export const lookAtKept = (kept: CheckRecord): Look => {
  const { hash, name, rendered, camera } = kept.photo;
  return { hash, name, rendered, camera, reading: kept.reading, draft: null, kept, marks: kept.marks, against: null };
};

export const useChecks = create<CheckState>((set, get) => {
  const measure = async (
    name: string,
    hash: string | null,
    marks: Marks | null,
    camera: string | null,
    { file, mirrored }: { readonly file?: Blob; readonly mirrored?: boolean | undefined } = {},
  ) => {
    const { key } = usePiece.getState();
    if (key === null) return;
    get().stop();
    const id = newJob('check');
    set({ job: { id, hash, stage: 'decode', done: 0, of: 0 }, problem: null });
    // It is held against the piece as it is kept: what was just changed goes there first.
    await usePiece.getState().saveNow();
    const bytes = file === undefined ? undefined : await fileBytes(file);
    if (get().job?.id !== id) return;
    if (bytes?.ok === false) return set({ job: null, look: null, problem: bytes.problem });
    const { piece } = usePiece.getState();
    const asked = {
      key,
      job: id,
      name,
      hash,
      marks,
      camera,
      ...(mirrored === undefined ? {} : { mirrored }),
    };
    const answer = await host().call('measurePhoto', asked, bytes?.value);
    if (get().job?.id !== id) return;
    set({ job: null });
    if (answer.ok) set({ look: lookAt(answer.value.result, marks, piece), chosenFlag: 0 });
    // A new photograph that can't be read takes the place of the check before it: the words must speak of one picture.
    else if (answer.problem.tag !== 'cancelled') {
      set(hash === null ? { look: null, problem: answer.problem } : { problem: answer.problem });
    }
  };
  return {
    summaries: [],
    summariesOf: null,
    ready: false,
    look: null,
    job: null,
    problem: null,
    listProblem: null,
    chosenFlag: 0,
    load: async () => {
      const { key } = usePiece.getState();
      if (key === null) return;
      if (get().summariesOf !== key) {
        get().stop();
        set({ summaries: [], summariesOf: key, look: null, problem: null, listProblem: null, ready: false });
      }
      const answer = await host().call('listChecks', { key });
      if (usePiece.getState().key !== key) return;
      if (answer.ok) {
        const summaries = [...answer.value.result].sort((one, other) => one.kept.localeCompare(other.kept));
        set({ summaries, listProblem: null });
        // With nothing else to look at, the newest kept check is what the weaver comes for.
        const newest = summaries.at(-1);
        if (get().look === null && get().job === null && newest !== undefined) await get().openCheck(newest.id);
      } else set({ problem: answer.problem, listProblem: answer.problem });
      set({ ready: true });
    },
    measureFile: (file, name, camera = null) => measure(name, null, null, camera, { file }),
    measureKept: (hash, name, camera = null) => measure(name, hash, null, camera),
    measureWithMarks: async (marks) => {
      const { look } = get();
      if (look !== null) await measure(look.name, look.hash, marks, look.camera);
    },
    measureAgain: async (mirrored) => {
      const { look } = get();
      if (look !== null) await measure(look.name, look.hash, look.marks, look.camera, { mirrored });
    },
    stop: () => {
      const { job } = get();
      if (job === null) return;
      set({ job: null });
      void host().call('cancelJob', { job: job.id });
    },
    keep: async (note) => {
      const { key } = usePiece.getState();
      const { look } = get();
      if (key === null || look === null || look.draft === null || keeping === look.draft) return null;
      keeping = look.draft;
      const answer = await host().call('keepCheck', { key, draft: look.draft, note });
      if (!answer.ok) {
        keeping = null;
        set({ problem: answer.problem });
        return null;
      }
      const kept = answer.value.result;
      // The list first, so that the check has its number when it is shown as kept.
      await get().load();
      if (get().look === look) set({ look: { ...look, draft: null, kept, against: null }, problem: null });
      return kept;
    },
    openCheck: async (id) => {
      const { key } = usePiece.getState();
      if (key === null) return;
      const answer = await host().call('readCheck', { key, id });
      if (!answer.ok) return set({ problem: answer.problem });
      set({ look: lookAtKept(answer.value.result), chosenFlag: 0, problem: null });
    },
    discard: async (id) => {
      const { key } = usePiece.getState();
      if (key === null) return;
      const answer = await host().call('discardCheck', { key, id });
      if (!answer.ok) set({ problem: answer.problem });
      else if (get().look?.kept?.id === id) set({ look: null });
      await get().load();
    },
    dismissFlag: async (flag, reason) => {
      const { key } = usePiece.getState();
      const { look } = get();
      if (key === null || look?.kept == null) return;
      const answer = await host().call('dismissFlag', { key, id: look.kept.id, flag, reason });
      if (!answer.ok) return set({ problem: answer.problem });
      set({ look: { ...look, kept: answer.value.result } });
      await get().load();
    },
    chooseFlag: (flag) => set({ chosenFlag: flag }),
    letGo: () => {
      set({ look: null, problem: null });
      void get().load();
    },
  };
});

// A measurement for a piece that is no longer open is for nobody.
usePiece.subscribe((now, before) => {
  if (now.key !== before.key) useChecks.getState().stop();
});

/** Progress of the job in hand, as the host tells it. Mounted with the program. @returns a function that stops it. */
export const followJobs = (): (() => void) =>
  host().listen((event) => {
    if (event.kind !== 'job') return;
    const { job } = useChecks.getState();
    if (job?.id === event.job) {
      useChecks.setState({ job: { id: job.id, hash: job.hash, stage: event.stage, done: event.done, of: event.of } });
    }
  });
