import { useLayoutEffect, useRef } from 'react';
import { create } from 'zustand';

/** Something that can be done on some screen, told apart from doing it: so it can be found from any other. */
export interface CommandOutline<Id extends string = string> {
  readonly id: Id;
  readonly words: string;
  /** Other words it is found by, for example the trade's `pick` for a pass. */
  readonly alsoFoundBy?: string;
  /** Names as `keyName` gives them; the first is the one shown. */
  readonly keys?: readonly string[];
  /** Keys that must answer also while the weaver types in a field. */
  readonly whileTyping?: boolean;
  /** What must be there first, as a sentence: said to whoever asks for it when it isn't. */
  readonly needs?: string;
}

/** Something the weaver can do from here: by its key, or found by its words. */
export interface Command extends CommandOutline {
  readonly run: () => void;
  /** What it needs isn't there. */
  readonly lacking?: boolean;
}

/** Commands of one screen with what each does. @param lacking those whose needs aren't met now. */
export const withRuns = <Id extends string>(
  outlines: readonly CommandOutline<Id>[],
  runs: Readonly<Record<Id, () => void>>,
  lacking?: Readonly<Partial<Record<Id, boolean>>>,
): readonly Command[] =>
  outlines.map((outline) => ({ ...outline, run: runs[outline.id], lacking: lacking?.[outline.id] ?? false }));

interface CommandState {
  /** Newest owner last; the newest answers a key first. */
  readonly lists: readonly { readonly owner: string; readonly commands: readonly Command[] }[];
  readonly put: (owner: string, commands: readonly Command[]) => void;
  readonly take: (owner: string) => void;
}

export const useCommandStore = create<CommandState>((set, get) => ({
  lists: [],
  put: (owner, commands) => {
    const lists = get().lists;
    const present = lists.some((list) => list.owner === owner);
    set({
      lists: present
        ? lists.map((list) => (list.owner === owner ? { owner, commands } : list))
        : [...lists, { owner, commands }],
    });
  },
  take: (owner) => set({ lists: get().lists.filter((list) => list.owner !== owner) }),
}));

/** Offers commands for as long as the component is on screen. The list may be made anew at every render. */
export function useCommands(owner: string, commands: readonly Command[]): void {
  const latest = useRef(commands);
  latest.current = commands;
  const outline = commands
    .map(({ id, words, keys, lacking }) => `${id} ${words} ${keys?.join(' ')} ${lacking === true}`)
    .join('\n');
  // Before the screen is seen, so that no key pressed on sight of it is lost.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the outline stands for the list.
  useLayoutEffect(() => {
    const { put, take } = useCommandStore.getState();
    put(
      owner,
      latest.current.map((command) => ({
        ...command,
        run: () => latest.current.find((other) => other.id === command.id)?.run(),
      })),
    );
    return () => take(owner);
  }, [owner, outline]);
}
