import { useEffect, useRef } from 'react';
import { host } from '../../host/currentHost.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';

/** Takes each photograph that arrives in the watched folder, for as long as the loom check is on screen. */
export function useWatchedFolder(take: (photo: Blob, name: string) => void): void {
  const key = usePiece((state) => state.key);
  const folder = useSettings((state) => state.settings.watchedFolder);
  const latest = useRef(take);
  latest.current = take;
  useEffect(() => {
    if (key === null || folder === null) return;
    void host().call('watchFolder', { key, path: folder });
    const stop = host().listen((event) => {
      if (event.kind !== 'watched-photo' || event.key !== key) return;
      void host()
        .call('watchedPhoto', { key, name: event.name })
        .then((answer) => {
          const bytes = answer.ok ? answer.value.bytes : null;
          if (bytes !== null) latest.current(new Blob([bytes.slice()]), event.name);
        });
    });
    return () => {
      stop();
      void host().call('watchFolder', { key, path: null });
    };
  }, [key, folder]);
}
