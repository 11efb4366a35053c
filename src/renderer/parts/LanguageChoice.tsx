import { useSettings } from '../state/settingsStore.ts';
import { useWords } from '../words/useWords.ts';
import { Choice } from './Choice.tsx';

/** The languages, each by its own name. */
export function LanguageChoice({ showLabel = false }: { readonly showLabel?: boolean }) {
  const words = useWords().shell;
  const { settings, change } = useSettings();
  return (
    <Choice
      label={words.language}
      showLabel={showLabel}
      value={settings.language}
      options={(['en', 'de'] as const).map((value) => ({ value, words: words.languages[value] }))}
      onChoose={(language) => change({ language })}
    />
  );
}
