import { type CommandOutline, useCommandStore } from '../keys/commandStore.ts';
import { useShell } from '../state/shellStore.ts';
import type { CommandGroup } from './commandGroups.ts';

/** Takes a wish back that waits for its screen. */
let letGo: () => void = () => undefined;

/**
 * Goes to a command's screen and does it there as soon as the screen offers its commands. Where the screen doesn't offer
 * it just now, or it lacks something, the weaver is told what it needs.
 */
export function doThere({ screen, bare, owners }: CommandGroup, { id, needs }: CommandOutline): void {
  letGo();
  const isThere = () => {
    const shell = useShell.getState();
    return shell.screen === screen && shell.bare === bare;
  };
  if (!isThere()) {
    useShell.getState().goTo(screen);
    if (bare) useShell.getState().setBare(true);
  }
  const attempt = (): boolean => {
    const offered = useCommandStore.getState().lists.filter((list) => owners.includes(list.owner));
    if (offered.length === 0) return false;
    const command = offered.flatMap((list) => list.commands).find((each) => each.id === id);
    if (command === undefined || command.lacking === true) useShell.getState().need(command?.needs ?? needs ?? null);
    else command.run();
    return true;
  };
  if (attempt()) return;
  // Not while the screen is still being put up, and no more once the weaver has gone elsewhere.
  const leave = [
    useCommandStore.subscribe(() => queueMicrotask(() => stillWaiting() && attempt() && letGo())),
    useShell.subscribe(() => {
      if (!isThere()) letGo();
    }),
  ];
  let waiting = true;
  const stillWaiting = () => waiting;
  letGo = () => {
    waiting = false;
    for (const each of leave) each();
  };
}
