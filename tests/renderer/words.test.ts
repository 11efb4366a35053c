import { describe, expect, it } from 'vitest';
import { de } from '../../src/renderer/words/de.ts';
import { en } from '../../src/renderer/words/en.ts';

type Leaf = readonly [path: string, value: unknown];

function leaves(value: unknown, path = ''): Leaf[] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, part]) => leaves(part, path === '' ? key : `${path}.${key}`));
}

const english = leaves(en);
const german = new Map(leaves(de));

/** Words that are rightly the same in both languages. */
const same = new Set([
  'shell.appName',
  'shell.millimetres',
  'shell.languages.en',
  'shell.languages.de',
  'shell.keyNames.Alt',
  'shell.keyNames.Escape',
  'shell.keyNames.Tab',
  'check.legend.plan',
  'check.layers.plan',
  'piece.name',
  'piece.loomName',
  'cartoon.tools.ellipse',
  'cartoon.names.ellipse',
  'cartoon.name',
  'order.tableColumns.1',
]);

describe('the words on screen', () => {
  it('are said in German wherever they are said in English', () => {
    expect([...german.keys()].sort()).toEqual(english.map(([path]) => path).sort());
  });

  it('take as many things in German as in English', () => {
    const differing = english.filter(([path, value]) => {
      const other = german.get(path);
      return typeof value !== typeof other;
    });
    expect(differing).toEqual([]);
  });

  it('are not left in English', () => {
    const left = english.filter(
      ([path, value]) =>
        typeof value === 'string' && /[a-z]{3}/.test(value) && german.get(path) === value && !same.has(path),
    );
    expect(left.map(([path]) => path)).toEqual([]);
  });

  it('blame nobody and shout at nobody', () => {
    const spoken = [...english, ...german].filter(
      (leaf): leaf is readonly [string, string] => typeof leaf[1] === 'string',
    );
    const unkind = spoken.filter(([, value]) => /!|\b(error|invalid|successfully|oops|failed)\b/i.test(value));
    expect(unkind).toEqual([]);
  });
});
