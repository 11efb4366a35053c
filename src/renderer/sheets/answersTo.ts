import type { CommandOutline } from '../keys/commandStore.ts';

/** Every letter group typed must stand somewhere in the words, or begin a word of the screen's name, in any order. */
export function answersTo(
  command: Pick<CommandOutline, 'words' | 'alsoFoundBy'>,
  typed: string,
  group: string = '',
): boolean {
  const said = `${command.words} ${command.alsoFoundBy ?? ''}`.toLocaleLowerCase();
  const names = group.toLocaleLowerCase().split(/\s+/);
  return typed
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((part) => said.includes(part) || names.some((name) => name.startsWith(part)));
}
