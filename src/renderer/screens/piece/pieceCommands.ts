import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';

/** What can be done on Piece. */
export const pieceCommands = ({ piece: words, shell }: Words) =>
  [
    { id: 'wider', words: words.keys.notch, keys: ['ArrowUp', 'ArrowRight'] },
    { id: 'narrower', words: words.keys.notch, keys: ['ArrowDown', 'ArrowLeft'] },
    { id: 'yarns', words: words.keys.yarns, keys: ['Y'] },
    { id: 'loom', words: words.changeLoom, keys: ['L'] },
    { id: 'warp', words: words.changeWarp, keys: ['W'] },
    { id: 'making', words: words.making, keys: ['G'] },
    { id: 'sums', words: words.arithmetic, keys: ['A'] },
    { id: 'finishing', words: words.finishing, keys: ['F'] },
    { id: 'add-yarn', words: words.addYarn },
    { id: 'piece-table', words: shell.table, keys: ['T'] },
    { id: 'print-warping', words: words.warpingSheet, keys: ['Ctrl+P'] },
  ] as const satisfies readonly CommandOutline[];
