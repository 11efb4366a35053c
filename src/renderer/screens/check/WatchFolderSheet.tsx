import { useId, useState } from 'react';
import { host } from '../../host/currentHost.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useRecent } from '../../state/recentStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';

/** Which folder a telephone's photographs arrive in; each new one there is measured by itself. */
export function WatchFolderSheet({ onClose }: { readonly onClose: () => void }) {
  const words = useWords().check;
  const key = usePiece((state) => state.key);
  const shell = useRecent((state) => state.shell);
  const { settings, change } = useSettings();
  const [path, setPath] = useState(settings.watchedFolder ?? '');
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = useId();
  const watch = async (asked: string) => {
    if (key === null) return;
    const answer = await host().call('watchFolder', { key, path: asked });
    if (!answer.ok) return setTrouble(`${answer.problem.sentence} ${answer.problem.remedy}`);
    if (answer.value.result.path === null) return;
    change({ watchedFolder: answer.value.result.path });
    onClose();
  };
  return (
    <SheetDialog title={words.watchFolder} onClose={onClose} place="top">
      <form
        className="watch-folder"
        onSubmit={(event) => {
          event.preventDefault();
          if (path.trim() !== '') void watch(path.trim());
        }}
      >
        <p>{words.watchLead}</p>
        <label htmlFor={field}>{words.watchPath}</label>
        <input id={field} data-first value={path} onChange={(event) => setPath(event.target.value)} />
        {trouble !== null && (
          <p role="alert" className="watch-trouble">
            {trouble}
          </p>
        )}
        <div className="watch-actions">
          {shell === 'electron' && <QuietButton onPress={() => void watch('')}>{words.watchChoose}</QuietButton>}
          {settings.watchedFolder !== null && (
            <QuietButton
              onPress={() => {
                change({ watchedFolder: null });
                onClose();
              }}
            >
              {words.watchStop}
            </QuietButton>
          )}
          <button type="submit" className="second-action">
            {words.watchStart}
          </button>
        </div>
      </form>
    </SheetDialog>
  );
}
