import { useEffect } from 'react';
import { useShell } from '../state/shellStore.ts';
import { useCommandStore } from './commandStore.ts';
import { isTyping, keyName } from './keyNames.ts';

/** Things that answer Enter and Space of their own accord. */
const pressable = 'button, a, input, select, textarea, summary, [role="button"], [role="option"], [role="slider"]';
const scrolled = '[role="listbox"], [role="menu"], [role="radiogroup"], [role="slider"], [data-own-keys]';

/** Sends each key press to the newest command that names it. Mounted once. */
export function useKeyboard(): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return;
      // A sheet over the screen has its own keys: the screen beneath must not move.
      if (useShell.getState().sheet !== null && event.key !== 'F1') return;
      const name = keyName(event);
      const target = event.target instanceof Element ? event.target : null;
      if ((name === 'Enter' || name === 'Space') && target?.closest(pressable)) return;
      if (name.startsWith('Arrow') && target?.closest(scrolled)) return;
      const typing = isTyping(event.target);
      for (const list of [...useCommandStore.getState().lists].reverse()) {
        const command = list.commands.find((each) => each.keys?.includes(name));
        if (command === undefined) continue;
        const chord = name.startsWith('Ctrl+') || name.startsWith('F');
        if (typing && !command.whileTyping && !(chord && !/^Ctrl\+(Shift\+)?[ZYACVX]$/.test(name))) return;
        event.preventDefault();
        command.run();
        return;
      }
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, []);
}
