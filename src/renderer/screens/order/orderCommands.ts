import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';

/** What can be done on Order of work. */
export const orderCommands = ({ order: words, shell }: Words) =>
  [
    { id: 'weave', words: words.toBench },
    { id: 'block-next', words: words.keys.move, keys: ['ArrowUp'] },
    { id: 'block-before', words: words.keys.move, keys: ['ArrowDown'] },
    { id: 'slits', words: words.slits, keys: ['S'] },
    { id: 'marks', words: words.marks, keys: ['M'] },
    { id: 'replan', words: words.replan.title, keys: ['R'] },
    { id: 'grow', words: words.grow, keys: ['G'] },
    { id: 'order-table', words: shell.table, keys: ['T'] },
    { id: 'print-order', words: words.print, keys: ['Ctrl+P'] },
  ] as const satisfies readonly CommandOutline[];
