import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';
import { type Tool, toolKeys } from './cartoonStore.ts';

/** Choosing a tool. */
export const toolCommands = ({ cartoon: words }: Words) =>
  toolKeys.map(([tool, key]): CommandOutline & { readonly tool: Tool } => ({
    id: `tool-${tool}`,
    tool,
    words: words.tools[tool],
    // Esc lets go one thing after another; by its words the tool is chosen at once.
    keys: tool === 'select' ? [] : [key],
  }));

/** What can be done on Cartoon beside choosing a tool. */
export const cartoonCommands = ({ cartoon: words, shell }: Words) => {
  const needs = words.needsShape;
  return [
    { id: 'lettering', words: words.lettering, keys: ['L'] },
    { id: 'bring-in', words: words.bringIn, keys: ['O'] },
    { id: 'nudge-left', words: words.keys.nudge, keys: ['ArrowLeft'], needs },
    { id: 'nudge-right', words: words.keys.nudge, keys: ['ArrowRight'], needs },
    { id: 'nudge-up', words: words.keys.nudge, keys: ['ArrowUp'], needs },
    { id: 'nudge-down', words: words.keys.nudge, keys: ['ArrowDown'], needs },
    { id: 'nudge5-left', words: words.keys.nudgeFive, keys: ['Shift+ArrowLeft'], needs },
    { id: 'nudge5-right', words: words.keys.nudgeFive, keys: ['Shift+ArrowRight'], needs },
    { id: 'nudge5-up', words: words.keys.nudgeFive, keys: ['Shift+ArrowUp'], needs },
    { id: 'nudge5-down', words: words.keys.nudgeFive, keys: ['Shift+ArrowDown'], needs },
    { id: 'mirror', words: words.keys.mirror, keys: ['M'], needs },
    { id: 'whole', words: words.keys.whole, keys: ['0'] },
    { id: 'closer', words: words.keys.zoom, keys: ['+', '='] },
    { id: 'further', words: words.keys.zoom, keys: ['-'] },
    { id: 'next-shape', words: words.keys.next, keys: ['N'] },
    { id: 'next-corner', words: words.keys.corner, keys: ['C'], needs },
    { id: 'type-sizes', words: words.keys.sizes, keys: ['I'], needs },
    { id: 'layer-up', words: words.higher, keys: ['PageUp'], needs },
    { id: 'layer-down', words: words.lower, keys: ['PageDown'], needs },
    { id: 'layer-top', words: words.topmost, keys: ['Shift+PageUp'], needs },
    { id: 'layer-bottom', words: words.lowest, keys: ['Shift+PageDown'], needs },
    { id: 'remove', words: words.keys.remove, keys: ['Delete', 'Backspace'], needs },
    { id: 'copy', words: words.copy, keys: ['Ctrl+D'], needs },
    { id: 'let-go', words: words.letGo, keys: ['Escape'] },
    { id: 'snap', words: words.snap, keys: ['S'] },
    { id: 'cartoon-table', words: shell.table, keys: ['T'] },
    { id: 'print-cartoon', words: words.printCartoon, keys: ['Ctrl+P'] },
  ] as const satisfies readonly CommandOutline[];
};
