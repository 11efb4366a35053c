import { useSyncExternalStore } from 'react';

type ShownTheme = 'light' | 'dark';

const shown = (): ShownTheme => (document.documentElement.dataset.theme === 'dark' ? 'dark' : 'light');

/** Told after the style sheets have the new colours, whether the weaver changed them or the computer did. */
function watchShown(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
}

/** The theme on screen now: what is painted with the style sheets' colours is painted anew when it changes. */
export const useShownTheme = (): ShownTheme => useSyncExternalStore(watchShown, shown);
