import { create } from 'zustand';
import type { CheckRecord } from '../../../core/model/check.ts';
import { host } from '../../host/currentHost.ts';

interface RecordState {
  /** Whole checks by id, read once; a kept check changes only by a flag put aside, which the loom check shows. */
  readonly records: ReadonlyMap<string, CheckRecord>;
  readonly of: string | null;
  readonly read: (key: string, ids: readonly string[]) => Promise<void>;
}

/** Kept checks with all their figures, for trends and comparing. */
export const useRecords = create<RecordState>((set, get) => ({
  records: new Map(),
  of: null,
  read: async (key, ids) => {
    if (get().of !== key) set({ records: new Map(), of: key });
    for (const id of ids) {
      if (get().records.has(id)) continue;
      const answer = await host().call('readCheck', { key, id });
      if (get().of !== key) return;
      if (answer.ok) set({ records: new Map(get().records).set(id, answer.value.result) });
    }
  },
}));
