import { failure } from '../../core/model/outcome.ts';
import { changeCheck, checkIds, discardCheck, readCheck } from '../store/checkStore.ts';
import { PHOTO_NAME } from '../store/layout.ts';
import { photoNames } from '../store/photoStore.ts';
import { openCheckSummaries } from './checkSummaries.ts';
import type { Draft, Drafts } from './drafts.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import { type KeptStamp, keepMeasured, newStamp } from './keepMeasured.ts';
import type { OpenPieces } from './openPieces.ts';
import type { SampleLabels } from './sample.ts';
import type { ServicePorts } from './servicePorts.ts';

type Names = 'listChecks' | 'listPhotos' | 'readCheck' | 'keepCheck' | 'dismissFlag' | 'discardCheck';

/** Calls about kept checks. */
export function checkHandlers(
  ports: ServicePorts,
  pieces: OpenPieces,
  drafts: Drafts,
  labels: () => Promise<SampleLabels>,
): Handlers<Names> {
  const { store } = ports;
  const summaries = openCheckSummaries(ports);
  const stamps = new WeakMap<Draft, KeptStamp>();
  const stampOf = (draft: Draft): KeptStamp => {
    const stamp = stamps.get(draft) ?? newStamp(store);
    stamps.set(draft, stamp);
    return stamp;
  };

  return {
    listChecks: ({ key }) => pieces.use(key, async (handle) => answer(await summaries(handle.folder))),
    listPhotos: ({ key }) =>
      pieces.use(key, async (handle) => {
        const known = await labels();
        const names = new Map<string, { name: string; rendered: boolean; checks: number; newest: string }>();
        for (const id of await checkIds(store, handle.folder)) {
          const read = await readCheck(store, handle.folder, id);
          if (!read.ok) continue;
          const { hash, name, rendered } = read.value.record.photo;
          names.set(hash, { name, rendered, checks: (names.get(hash)?.checks ?? 0) + 1, newest: id });
        }
        const photos = (await photoNames(store, handle.folder)).map((file) => {
          const hash = PHOTO_NAME.exec(file)![1]!;
          const kept = names.get(hash);
          return {
            hash,
            name: kept?.name ?? known.nameOf(hash) ?? file.slice(0, 12),
            rendered: kept?.rendered ?? known.isRendered(hash),
            checks: kept?.checks ?? 0,
            newest: kept?.newest ?? '~',
          };
        });
        photos.sort((a, b) => a.newest.localeCompare(b.newest) || a.name.localeCompare(b.name));
        return answer(photos.map(({ hash, name, rendered, checks }) => ({ hash, name, rendered, checks })));
      }),
    readCheck: ({ key, id }) =>
      pieces.use(key, async (handle) => {
        const read = await readCheck(store, handle.folder, id);
        return read.ok ? answer(read.value.record) : read;
      }),
    keepCheck: ({ key, draft: draftName, note }) =>
      pieces.use(key, async (handle) => {
        const draft = drafts.get(draftName);
        if (draft === null || draft.key !== key) {
          return failure(
            'draft-gone',
            'The measurement is no longer at hand.',
            'Measure the photograph again, then keep it.',
          );
        }
        const rendered = (await labels()).isRendered(draft.hash);
        const kept = await keepMeasured(store, handle, { ...draft, rendered }, note, stampOf(draft));
        if (!kept.ok) return kept;
        drafts.remove(draftName);
        return answer(kept.value);
      }),
    dismissFlag: ({ key, id, flag, reason }) =>
      pieces.use(key, async (handle) => {
        const before = await readCheck(store, handle.folder, id);
        if (!before.ok) return before;
        if (before.value.record.reading.flags[flag] === undefined) {
          return failure('flag-missing', 'That flag is not in the check.', 'Open the check again.');
        }
        const changed = await changeCheck(store, handle, id, (record) => ({
          ...record,
          dismissed: [...record.dismissed.filter((one) => one.flag !== flag), { flag, reason }],
        }));
        return changed.ok ? answer(changed.value) : changed;
      }),
    discardCheck: ({ key, id }) =>
      pieces.use(key, async (handle) => {
        const gone = await discardCheck(store, handle, id);
        return gone.ok ? answer({}) : gone;
      }),
  };
}
