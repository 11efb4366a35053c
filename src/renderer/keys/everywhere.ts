import { usePiece } from '../state/pieceStore.ts';
import { screenNames, useShell } from '../state/shellStore.ts';
import { useTour } from '../tour/tourStore.ts';
import { useWords } from '../words/useWords.ts';
import { useCommands } from './commandStore.ts';

/** What answers on every screen: undo, redo, the five screens, words and keys, finding things, the main action. */
export function useEverywhereCommands(): void {
  const { shell: words, tour } = useWords();
  const { goTo, openSheet } = useShell.getState();
  const toggle = (sheet: 'words-and-keys' | 'find' | 'pieces') =>
    openSheet(useShell.getState().sheet === sheet ? null : sheet);
  useCommands('everywhere', [
    ...screenNames.map((name, index) => ({
      id: `go-${name}`,
      words: words.screens[name],
      keys: [`Ctrl+${index + 1}`],
      run: () => goTo(name),
    })),
    { id: 'undo', words: words.undo, keys: ['Ctrl+Z'], run: () => usePiece.getState().undo() },
    { id: 'redo', words: words.redo, keys: ['Ctrl+Shift+Z', 'Ctrl+Y'], run: () => usePiece.getState().redo() },
    { id: 'find', words: words.find, keys: ['Ctrl+K'], run: () => toggle('find') },
    { id: 'pieces', words: words.pieces, keys: ['Ctrl+O'], run: () => toggle('pieces') },
    { id: 'help', words: words.wordsAndKeys, keys: ['F1', '?'], run: () => toggle('words-and-keys') },
    { id: 'tour', words: tour.start, run: () => void useTour.getState().begin() },
    {
      id: 'main',
      words: words.keys.main,
      keys: ['Enter'],
      run: () => document.querySelector<HTMLElement>('[data-main-action]')?.click(),
    },
  ]);
}
