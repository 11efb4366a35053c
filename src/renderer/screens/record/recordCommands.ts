import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';

/** What can be done on Record. */
export const recordCommands = ({ record: words, check }: Words) => {
  const needs = words.needsCheck;
  return [
    { id: 'slide-left', words: words.slideLeft, keys: ['ArrowLeft'], needs },
    { id: 'slide-right', words: words.slideRight, keys: ['ArrowRight'], needs },
    { id: 'earlier-check', words: words.earlierCheck, keys: ['['], needs },
    { id: 'later-check', words: words.laterCheck, keys: [']'], needs },
    { id: 'note', words: words.addNote, keys: ['N'] },
    { id: 'table', words: words.table, keys: ['T'] },
    { id: 'open-check', words: words.openCheck, keys: ['O'], needs },
    { id: 'report', words: words.report, keys: ['R'], needs },
    { id: 'share', words: check.share, keys: ['G'], needs },
    { id: 'folder', words: words.folder },
  ] as const satisfies readonly CommandOutline[];
};
