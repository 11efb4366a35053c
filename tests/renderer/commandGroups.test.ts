import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandGroups } from '../../src/renderer/screens/commandGroups.ts';
import { answersTo } from '../../src/renderer/sheets/answersTo.ts';
import { de } from '../../src/renderer/words/de.ts';
import { en } from '../../src/renderer/words/en.ts';

const screens = join(import.meta.dirname, '../../src/renderer/screens');

/** Every name under which a screen offers commands. */
const owners = (readdirSync(screens, { recursive: true, encoding: 'utf8' }) as string[])
  .filter((file) => /\.tsx?$/.test(file))
  .flatMap((file) => [...readFileSync(join(screens, file), 'utf8').matchAll(/useCommands\(\s*'([\w-]+)'/g)])
  .map(([, owner]) => owner!);

describe('commands found from any screen', () => {
  it('are those of every screen that has any', () => {
    expect(owners.length).toBeGreaterThan(8);
    const known = commandGroups(en).flatMap((group) => group.owners);
    // The first start has no piece: nothing of it can be done once there is one.
    expect(owners.filter((owner) => owner !== 'first-run' && !known.includes(owner))).toEqual([]);
  });

  it.each([
    ['English', en],
    ['German', de],
  ])('have words and a name of their own on each screen, in %s', (_, words) => {
    for (const { name, commands } of commandGroups(words)) {
      const ids = commands.map(({ id }) => id);
      expect([name, new Set(ids).size]).toEqual([name, ids.length]);
      expect(commands.filter(({ words: said }) => said.trim() === '')).toEqual([]);
    }
  });

  it('answer to letters of their words and of their screen, in any order', () => {
    const slits = { words: 'Slits and overhangs' };
    expect(answersTo(slits, 'over sl', 'Order of work')).toBe(true);
    expect(answersTo(slits, 'order slits', 'Order of work')).toBe(true);
    expect(answersTo(slits, 'record', 'Order of work')).toBe(false);
    // Letters inside the name of a group say nothing about what stands in it.
    expect(answersTo({ words: 'Cartoon' }, 're', 'Everywhere')).toBe(false);
    expect(answersTo({ words: 'Record' }, 're', 'Everywhere')).toBe(true);
  });
});
