import { tellIn } from '../../core/words/telling.ts';
import { useSettings } from '../state/settingsStore.ts';

/** What the core or the host says, in the weaver's language. */
export const tell = (text: string): string => tellIn(useSettings.getState().settings.language, text);

/** The same for a component: it draws itself anew when the language changes. */
export function useTell(): (text: string) => string {
  const language = useSettings((state) => state.settings.language);
  return (text) => tellIn(language, text);
}
