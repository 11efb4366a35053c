import { useEffect } from 'react';
import { useEverywhereCommands } from './keys/everywhere.ts';
import { useFocusKept } from './keys/useFocusKept.ts';
import { useKeyboard } from './keys/useKeyboard.ts';
import { Bar } from './parts/Bar.tsx';
import { ErrorGuard } from './parts/ErrorGuard.tsx';
import { LiveRegion } from './parts/LiveRegion.tsx';
import { useFlagged } from './screens/check/useFlagged.ts';
import { Screen as FirstRun } from './screens/firstRun/Screen.tsx';
import { screens } from './screens/registry.ts';
import { Find } from './sheets/Find.tsx';
import { PieceList } from './sheets/PieceList.tsx';
import { WordsAndKeys } from './sheets/WordsAndKeys.tsx';
import { usePiece } from './state/pieceStore.ts';
import { useSettings } from './state/settingsStore.ts';
import { useShell } from './state/shellStore.ts';
import { applyTheme, watchSystemTheme } from './theme/applyTheme.ts';
import { Tour } from './tour/Tour.tsx';
import { useTour } from './tour/tourStore.ts';

/** Bar, the current screen with its footer, and whatever sheet lies over it. */
export function App() {
  const { screen, sheet, bare } = useShell();
  const key = usePiece((state) => state.key);
  const settings = useSettings((state) => state.settings);
  const flagged = useFlagged();
  const touring = useTour((state) => state.at !== null);
  useKeyboard();
  useFocusKept();
  useEverywhereCommands();
  useEffect(() => watchSystemTheme(() => applyTheme(useSettings.getState().settings)), []);
  const Current = key === null ? FirstRun : screens[screen];
  return (
    <div className="app" data-text-size={settings.textSize}>
      {!bare && <Bar flagged={flagged} />}
      {!bare && touring && key !== null && <Tour />}
      <ErrorGuard name={`${key} ${screen}`}>
        <Current key={`${key} ${screen}`} />
      </ErrorGuard>
      <LiveRegion />
      {sheet === 'words-and-keys' && <WordsAndKeys />}
      {sheet === 'find' && <Find />}
      {sheet === 'pieces' && <PieceList />}
    </div>
  );
}
