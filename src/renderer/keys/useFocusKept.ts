import { useEffect } from 'react';

/**
 * Where what had the focus goes away, a screen left or a thing thrown away, its keys would lead nowhere: the sentence at
 * the head takes the focus, or the first button of the sheet that lies over the screen. Mounted once.
 */
export function useFocusKept(): void {
  useEffect(() => {
    let held: Element | null = null;
    const hold = (event: FocusEvent) => {
      held = event.target instanceof Element ? event.target : null;
    };
    const keep = () => {
      if (document.activeElement !== document.body || held?.isConnected) return;
      const sheet = document.querySelector('dialog[open]');
      (sheet ?? document).querySelector<HTMLElement>(sheet ? 'button' : '[data-sentence]')?.focus();
    };
    keep();
    const changes = new MutationObserver(keep);
    changes.observe(document.body, { childList: true, subtree: true });
    window.addEventListener('focusin', hold);
    return () => {
      changes.disconnect();
      window.removeEventListener('focusin', hold);
    };
  }, []);
}
