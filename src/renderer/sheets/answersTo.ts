import type { CommandOutline } from '../keys/commandStore.ts';

/** Every letter group typed must stand somewhere in the words, or in the name of the screen, in any order. */
export function answersTo(
  command: Pick<CommandOutline, 'words' | 'alsoFoundBy'>,
  typed: string,
  group: string = '',
): boolean {
  const said = `${command.words} ${command.alsoFoundBy ?? ''} ${group}`.toLocaleLowerCase();
  return typed
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((part) => said.includes(part));
}
