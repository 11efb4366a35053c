import type { LanguageName } from './telling.ts';

const spoken: readonly LanguageName[] = ['en', 'de'];

/**
 * The language of a first start: the first of the wished ones that there are words in, English where there are none.
 * @param wished language tags (BCP 47, `de-AT`), the dearest first; only the language itself counts, not the country
 */
export function chooseLanguage(wished: readonly string[]): LanguageName {
  for (const tag of wished) {
    const language = tag.trim().toLowerCase().split(/[-_]/)[0];
    const found = spoken.find((name) => name === language);
    if (found !== undefined) return found;
  }
  return 'en';
}
