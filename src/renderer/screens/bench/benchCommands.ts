import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';

/** What can be done at the bench. */
export const benchCommands = ({ bench: words }: Words) =>
  [
    {
      id: 'turn-done',
      words: words.done,
      keys: ['Space', 'Enter', 'MediaPlayPause', 'MediaTrackNext', 'PageDown'],
    },
    { id: 'turn-back', words: words.back, keys: ['Backspace', 'Ctrl+Z', 'MediaTrackPrevious', 'PageUp'] },
    { id: 'look-ahead', words: words.keys.ahead, keys: ['ArrowUp', 'ArrowRight'] },
    { id: 'look-back', words: words.keys.ahead, keys: ['ArrowDown', 'ArrowLeft'] },
    { id: 'leave-bench', words: words.leaveBench, keys: ['Escape'] },
  ] as const satisfies readonly CommandOutline[];
