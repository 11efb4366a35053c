import { useEffect, useId, useRef, useState } from 'react';
import './find.css';
import { type CommandOutline, useCommandStore } from '../keys/commandStore.ts';
import { KeyCap } from '../parts/KeyCap.tsx';
import { SheetDialog } from '../parts/SheetDialog.tsx';
import { type CommandGroup, commandGroups } from '../screens/commandGroups.ts';
import { doThere } from '../screens/doThere.ts';
import { usePiece } from '../state/pieceStore.ts';
import { useShell } from '../state/shellStore.ts';
import type { Words } from '../words/en.ts';
import { useWords } from '../words/useWords.ts';
import { answersTo } from './answersTo.ts';

interface Choice {
  readonly command: CommandOutline;
  readonly choose: () => void;
}

interface Choices {
  readonly name: string;
  readonly choices: readonly Choice[];
}

/** Commands of the same words are one to whoever reads them: the first stands for all. */
const onceEach = (choices: readonly Choice[]): readonly Choice[] =>
  [...new Map([...choices].reverse().map((choice) => [choice.command.words, choice])).values()].reverse();

/** Everything there is to do: on this screen first, then what answers everywhere, then screen by screen. */
function useEverything(all: Words): readonly Choices[] {
  const lists = useCommandStore((state) => state.lists);
  const { screen, bare } = useShell();
  const noPiece = usePiece((state) => state.key === null);
  const groups = commandGroups(all);
  const here = noPiece ? undefined : groups.find((group) => group.screen === screen && group.bare === bare);
  const owned = new Set(groups.flatMap((group) => group.owners));
  const live = (owners: (owner: string) => boolean): readonly Choice[] =>
    [...lists]
      .reverse()
      .filter((list) => owners(list.owner))
      .flatMap((list) => list.commands)
      .map((command) => ({
        command,
        choose: () => (command.lacking === true ? useShell.getState().need(command.needs ?? null) : command.run()),
      }));
  const there = (group: CommandGroup): readonly Choice[] =>
    group.commands.map((command) => ({
      command,
      choose: () => (noPiece ? useShell.getState().need(all.shell.needsPiece(group.name)) : doThere(group, command)),
    }));
  const current = live((owner) => owner === 'first-run' || (here?.owners.includes(owner) ?? false));
  // What the screen doesn't offer as it is now is found too, and says what it needs.
  const offered = new Set(current.map(({ command }) => command.id));
  const further = here === undefined ? [] : there(here).filter(({ command }) => !offered.has(command.id));
  return [
    { name: here?.name ?? all.firstRun.name, choices: [...current, ...further] },
    { name: all.shell.everywhere, choices: live((owner) => owner !== 'first-run' && !owned.has(owner)) },
    ...groups.filter((group) => group !== here).map((group) => ({ name: group.name, choices: there(group) })),
  ].map(({ name, choices }) => ({ name, choices: onceEach(choices) }));
}

/** Ctrl+K: type a few letters of what you want, press Enter; a command of another screen goes there first. */
export function Find() {
  const all = useWords();
  const words = all.shell;
  const everything = useEverything(all);
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const listId = useId();
  const rows = useRef<HTMLDivElement>(null);
  const close = () => useShell.getState().openSheet(null);
  const groups = everything
    .map(({ name, choices }) => ({ name, choices: choices.filter(({ command }) => answersTo(command, typed, name)) }))
    .filter(({ choices }) => choices.length > 0);
  const found = groups.flatMap(({ name, choices }) => choices.map((choice) => ({ name, choice })));
  const place = Math.min(at, found.length - 1);
  const chosen = found[place];
  const idOf = (index: number) => `${listId}-${index}`;
  useEffect(() => {
    rows.current?.querySelectorAll('[role="option"]')[place]?.scrollIntoView({ block: 'nearest' });
  }, [place]);
  const run = ({ choose }: Choice) => {
    close();
    choose();
  };
  let next = 0;
  return (
    <SheetDialog title={words.find} onClose={close} place="top">
      <input
        className="find-field"
        data-first
        role="combobox"
        aria-expanded="true"
        aria-controls={listId}
        aria-activedescendant={chosen && idOf(place)}
        aria-label={words.findHint}
        placeholder={words.findHint}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (event.key === 'ArrowDown') setAt(Math.min(place + 1, found.length - 1));
          else if (event.key === 'ArrowUp') setAt(Math.max(place - 1, 0));
          else if (event.key === 'Enter' && chosen) run(chosen.choice);
          else return;
          event.preventDefault();
        }}
      />
      {found.length === 0 && <p className="second">{words.nothingFound}</p>}
      <div ref={rows} className="find-rows" role="listbox" id={listId} aria-label={words.find}>
        {groups.map(({ name, choices }) => (
          // biome-ignore lint/a11y/useSemanticElements: a listbox groups its options by this role.
          <div key={name} role="group" aria-label={name}>
            <p className="find-group" aria-hidden="true">
              {name}
            </p>
            {choices.map((choice) => {
              const index = next++;
              const { command } = choice;
              return (
                // biome-ignore lint/a11y/useKeyWithClickEvents: the field above takes the keys.
                // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus and names the chosen row.
                <div
                  key={command.id}
                  id={idOf(index)}
                  className="find-row"
                  role="option"
                  aria-selected={index === place}
                  onClick={() => run(choice)}
                >
                  <span>{command.words}</span>
                  {command.keys?.[0] && <KeyCap keys={command.keys[0]} />}
                </div>
              );
            })}
          </div>
        ))}
      </div>
    </SheetDialog>
  );
}
