import type { CheckSummary } from '../../core/contract/hostApi.ts';
import { checkIds, readCheck } from '../store/checkStore.ts';
import { layout } from '../store/layout.ts';
import { summariseCheck } from './checkSummary.ts';
import type { ServicePorts } from './servicePorts.ts';

/** What is listed of every check; a file that hasn't changed since the last listing isn't read again. */
export function openCheckSummaries({ store, log }: Pick<ServicePorts, 'store' | 'log'>) {
  const known = new Map<string, { readonly mark: string; readonly summary: CheckSummary }>();
  return async (folder: string): Promise<CheckSummary[]> => {
    const summaries: CheckSummary[] = [];
    for (const id of await checkIds(store, folder)) {
      const path = layout.check(folder, id);
      const stat = await store.files.stat(path);
      const mark = `${stat?.size} ${stat?.modifiedMs}`;
      const before = known.get(path);
      if (before?.mark === mark) {
        summaries.push(before.summary);
        continue;
      }
      const read = await readCheck(store, folder, id);
      if (read.ok) {
        const summary = summariseCheck(read.value.record);
        known.set(path, { mark, summary });
        summaries.push(summary);
      } else log.write('problem', `check left out of the list: ${read.problem.tag} ${read.problem.detail ?? ''}`);
    }
    return summaries;
  };
}
