import { useCommandStore } from '../keys/commandStore.ts';
import { QuietButton } from '../parts/Actions.tsx';
import { Choice } from '../parts/Choice.tsx';
import { KeyCap } from '../parts/KeyCap.tsx';
import { LanguageChoice } from '../parts/LanguageChoice.tsx';
import { SheetDialog } from '../parts/SheetDialog.tsx';
import { TroubleReport } from '../parts/TroubleReport.tsx';
import { usePiece } from '../state/pieceStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { makeSheet } from '../state/sheets.ts';
import { useShell } from '../state/shellStore.ts';
import { useWords } from '../words/useWords.ts';
import { AllKeys } from './AllKeys.tsx';

/** F1: the keys that answer here, what the trade's words mean, and how things look. */
export function WordsAndKeys() {
  const words = useWords().shell;
  const { settings, change } = useSettings();
  const piece = usePiece((state) => state.key);
  const lists = useCommandStore((state) => state.lists);
  const withKeys = [...lists].reverse().flatMap((list) => list.commands.filter((command) => command.keys?.[0]));
  return (
    <SheetDialog title={words.wordsAndKeys} onClose={() => useShell.getState().openSheet(null)} place="wide">
      {/* The first thing read, and the sheet's top. */}
      <h3 data-first tabIndex={-1}>
        {words.look}
      </h3>
      <div className="sheet-choices">
        <LanguageChoice showLabel />
        <Choice
          label={words.theme}
          showLabel
          value={settings.theme}
          options={(['system', 'light', 'dark'] as const).map((value) => ({ value, words: words.themes[value] }))}
          onChoose={(theme) => change({ theme })}
        />
        <Choice
          label={words.textSize}
          showLabel
          value={settings.textSize}
          options={([100, 115, 130, 150] as const).map((value) => ({ value, words: words.percent(value) }))}
          onChoose={(textSize) => change({ textSize })}
        />
      </div>
      <h3>{words.keysHere}</h3>
      <dl className="key-rows">
        {withKeys.map((command) => (
          <div key={command.id} style={{ display: 'contents' }}>
            <dt>
              <KeyCap keys={command.keys?.[0] ?? ''} />
            </dt>
            <dd>{command.words}</dd>
          </div>
        ))}
      </dl>
      <h3>±</h3>
      <p>{words.giveOrTake}</p>
      <h3>{words.wordsHead}</h3>
      <dl className="word-rows">
        {words.glossary.map(([word, meaning]) => (
          <div key={word} style={{ display: 'contents' }}>
            <dt>{word}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <h3>{words.allKeys}</h3>
      <AllKeys />
      {piece !== null && (
        <p className="sheet-print">
          <QuietButton onPress={() => void makeSheet(piece, 'keys', null)}>{words.printKeys}</QuietButton>
        </p>
      )}
      <h3>{words.trouble.head}</h3>
      <TroubleReport />
    </SheetDialog>
  );
}
