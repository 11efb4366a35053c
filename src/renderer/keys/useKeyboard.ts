import { useEffect } from 'react';
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
      const name = keyName(event);
      // A sheet over the screen has its own keys: the screen beneath must not move.
      const sheet = document.querySelector('dialog[open]') !== null;
      if (sheet && name === 'Enter') return;
      const target = event.target instanceof Element ? event.target : null;
      if ((name === 'Enter' || name === 'Space') && target?.closest(pressable)) return;
      if (name.startsWith('Arrow') && target?.closest(scrolled)) return;
      const typing = isTyping(event.target);
      for (const list of [...useCommandStore.getState().lists].reverse()) {
        if (sheet && list.owner !== 'everywhere') continue;
        const command = list.commands.find((each) => each.keys?.includes(name));
        if (command === undefined) continue;
        const chord = name.startsWith('Ctrl+') || /^F\d/.test(name);
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
