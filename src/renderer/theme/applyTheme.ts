import type { Settings } from '../../core/contract/hostApi.ts';

const darkSystem = () => window.matchMedia('(prefers-color-scheme: dark)');

/** Puts theme, language and text size on the document; the style sheets do the rest. */
export function applyTheme(settings: Pick<Settings, 'theme' | 'language' | 'textSize'>): void {
  const root = document.documentElement;
  const dark = settings.theme === 'dark' || (settings.theme === 'system' && darkSystem().matches);
  root.dataset.theme = dark ? 'dark' : 'light';
  root.lang = settings.language;
  root.style.fontSize = `${settings.textSize}%`;
}

/** Calls back whenever the system changes between light and dark. @returns a function that stops listening. */
export function watchSystemTheme(changed: () => void): () => void {
  const query = darkSystem();
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}
