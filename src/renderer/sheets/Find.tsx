import { useId, useState } from 'react';
import './find.css';
import { type Command, useCommandStore } from '../keys/commandStore.ts';
import { KeyCap } from '../parts/KeyCap.tsx';
import { SheetDialog } from '../parts/SheetDialog.tsx';
import { useShell } from '../state/shellStore.ts';
import { useWords } from '../words/useWords.ts';

/** Every letter group typed must stand somewhere in the words, in any order. */
export function answersTo(command: Pick<Command, 'words' | 'alsoFoundBy'>, typed: string): boolean {
  const said = `${command.words} ${command.alsoFoundBy ?? ''}`.toLocaleLowerCase();
  return typed
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((part) => said.includes(part));
}

/** Ctrl+K: type a few letters of what you want, press Enter. */
export function Find() {
  const words = useWords().shell;
  const lists = useCommandStore((state) => state.lists);
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const listId = useId();
  const close = () => useShell.getState().openSheet(null);
  const all = [...lists].reverse().flatMap((list) => list.commands);
  const found = all.filter((command) => answersTo(command, typed)).slice(0, 12);
  const chosen = found[Math.min(at, found.length - 1)];
  const run = (command: Command) => {
    close();
    command.run();
  };
  return (
    <SheetDialog title={words.find} onClose={close} place="top">
      <input
        className="find-field"
        data-first
        role="combobox"
        aria-expanded="true"
        aria-controls={listId}
        aria-activedescendant={chosen && `${listId}-${chosen.id}`}
        aria-label={words.findHint}
        placeholder={words.findHint}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          if (event.key === 'ArrowDown') setAt(Math.min(at + 1, found.length - 1));
          else if (event.key === 'ArrowUp') setAt(Math.max(at - 1, 0));
          else if (event.key === 'Enter' && chosen) run(chosen);
          else return;
          event.preventDefault();
        }}
      />
      {found.length === 0 && <p className="second">{words.nothingFound}</p>}
      <div className="find-rows" role="listbox" id={listId} aria-label={words.find}>
        {found.map((command) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the field above takes the keys.
          // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus and names the chosen row.
          <div
            key={command.id}
            id={`${listId}-${command.id}`}
            role="option"
            aria-selected={command === chosen}
            onClick={() => run(command)}
          >
            <span>{command.words}</span>
            {command.keys?.[0] && <KeyCap keys={command.keys[0]} />}
          </div>
        ))}
      </div>
    </SheetDialog>
  );
}
