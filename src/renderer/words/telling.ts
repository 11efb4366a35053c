import { tellIn } from '../../core/words/telling.ts';
import { useSettings } from '../state/settingsStore.ts';

/** A figure stays on one line with its fraction and its unit. */
export const tied = (text: string): string =>
  text
    .replace(/(\d) (?=[¼½¾⅛⅜⅝⅞]|\d+\u2044\d)/gu, '$1\u00a0')
    .replace(/([\d¼½¾⅛⅜⅝⅞]) (?=(?:mm|cm|m|in|inch|Zoll|yd|g)(?!\p{L}))/gu, '$1\u00a0');

/** What the core or the host says, in the weaver's language. */
export const tell = (text: string): string => tied(tellIn(useSettings.getState().settings.language, text));

/** The same for a component: it draws itself anew when the language changes. */
export function useTell(): (text: string) => string {
  const language = useSettings((state) => state.settings.language);
  return (text) => tied(tellIn(language, text));
}
