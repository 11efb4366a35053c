import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keyGroups } from '../../src/core/report/keyGroups.ts';
import { tellIn } from '../../src/core/words/telling.ts';
import { toolKeys } from '../../src/renderer/screens/cartoon/cartoonStore.ts';

const renderer = join(import.meta.dirname, '../../src/renderer');

/** Keys that commands in these folders name, as the keyboard calls them. */
function commandKeys(folder: string): string[] {
  const keys = new Set<string>();
  const files = readdirSync(join(renderer, folder), { recursive: true, encoding: 'utf8' });
  for (const file of files.filter((name) => /\.tsx?$/.test(name))) {
    const source = readFileSync(join(renderer, folder, file), 'utf8');
    // A command has an id, words and keys; hints in the footer have no id.
    for (const [, list] of source.matchAll(/\bid: [^{}]*?keys: \[([^\]]*)\]/g)) {
      for (const [, key] of list!.matchAll(/'([^']+)'/g)) keys.add(key!);
    }
  }
  return [...keys];
}

/** The names the sheet uses for what the keyboard calls otherwise. */
const onSheet: Readonly<Record<string, readonly string[]>> = {
  Arrows: ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'],
  'Shift+Arrows': ['Shift+ArrowUp', 'Shift+ArrowDown', 'Shift+ArrowLeft', 'Shift+ArrowRight'],
  'Ctrl+1–5': ['Ctrl+1', 'Ctrl+2', 'Ctrl+3', 'Ctrl+4', 'Ctrl+5'],
  '1–9': [...'123456789'],
  Esc: ['Escape'],
};
const sheetKeys = (title: string): string[] =>
  (keyGroups.find((group) => group.title === title)?.keys ?? []).flatMap(({ keys }) =>
    keys.split(', ').flatMap((chord) => {
      const name = chord.replaceAll(' + ', '+');
      return onSheet[name] ?? [name];
    }),
  );

/** Keys of headphones and keyboards that play music are named in words; the second of two redo keys too. */
const inWords = /^Media|^Ctrl\+Y$/;

describe('the sheet of all keys', () => {
  it.each([
    ['Everywhere', 'keys'],
    ['First start', 'screens/firstRun'],
    ['Piece', 'screens/piece'],
    ['Cartoon', 'screens/cartoon'],
    ['Order of work', 'screens/order'],
    ['Bench', 'screens/bench'],
    ['Loom check', 'screens/check'],
    ['Record', 'screens/record'],
  ])('%s: every key a command names is there', (title, folder) => {
    const named = commandKeys(folder);
    expect(named.length).toBeGreaterThan(2);
    const listed = [...sheetKeys(title), ...sheetKeys('Everywhere')];
    expect(named.filter((key) => !listed.includes(key) && !inWords.test(key))).toEqual([]);
  });

  it('names every tool of the cartoon', () => {
    const listed = sheetKeys('Cartoon');
    expect(toolKeys.map(([, key]) => key).filter((key) => !listed.includes(key))).toEqual([]);
  });

  it('is said in German', () => {
    const said = keyGroups.flatMap(({ title, keys }) => [title, ...keys.map(({ does }) => does)]);
    expect(said.filter((words) => tellIn('de', words) === words)).toEqual([]);
  });
});
