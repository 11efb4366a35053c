import { create } from 'zustand';
import type { CheckRecord } from '../../../core/model/check.ts';
import type { Problem } from '../../../core/model/outcome.ts';
import { host } from '../../host/currentHost.ts';
import { useChecks } from '../check/checkStore.ts';

interface RecordState {
  /** Whole checks by id, read once. */
  readonly records: ReadonlyMap<string, CheckRecord>;
  /** Why checks that the list holds couldn't be read, by id. */
  readonly problems: ReadonlyMap<string, Problem>;
  readonly of: string | null;
  readonly read: (key: string, ids: readonly string[]) => Promise<void>;
}

/** Kept checks with all their figures, for trends and comparing. */
export const useRecords = create<RecordState>((set, get) => ({
  records: new Map(),
  problems: new Map(),
  of: null,
  read: async (key, ids) => {
    if (get().of !== key) set({ records: new Map(), problems: new Map(), of: key });
    for (const id of ids) {
      if (get().records.has(id)) continue;
      const answer = await host().call('readCheck', { key, id });
      if (get().of !== key) return;
      if (answer.ok) set({ records: new Map(get().records).set(id, answer.value.result) });
      else set({ problems: new Map(get().problems).set(id, answer.problem) });
    }
  },
}));

// A kept check changes only by a flag put aside, on Loom check.
useChecks.subscribe(({ look }) => {
  const kept = look?.kept;
  if (!kept) return;
  const { records } = useRecords.getState();
  const known = records.get(kept.id);
  if (known && known !== kept) useRecords.setState({ records: new Map(records).set(kept.id, kept) });
});
