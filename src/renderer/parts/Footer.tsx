import { useEffect } from 'react';
import './footer.css';
import { readAnew, takeOver } from '../state/pieceActions.ts';
import { usePiece } from '../state/pieceStore.ts';
import { useShell } from '../state/shellStore.ts';
import { tell } from '../words/telling.ts';
import { useWords } from '../words/useWords.ts';
import { type Action, type MainAction, MainButton, QuietButton, SecondButton } from './Actions.tsx';
import { KeyCap } from './KeyCap.tsx';

export interface KeyHint {
  /** One name, or several shown side by side: `['ArrowUp', 'ArrowDown']`. */
  readonly keys: readonly string[];
  readonly words: string;
}

interface FooterProps {
  /** The three or four keys that matter here. */
  readonly hints: readonly KeyHint[];
  /** A quiet line before the actions, for example which check this is. */
  readonly aside?: string;
  readonly second?: Action;
  readonly main?: MainAction;
}

/** Keys at the left, saving in the middle only when something isn't saved, the main action in the corner. */
export function Footer({ hints, aside, second, main }: FooterProps) {
  const words = useWords().shell;
  const notSaved = usePiece((state) => state.notSaved);
  const readOnly = usePiece((state) => state.readOnly);
  const needed = useShell((state) => state.needed);
  useEffect(() => {
    if (needed === null) return;
    // The very press that asked for it may still be on its way here.
    const since = performance.now();
    const goneOn = (event: Event) => {
      if (event.timeStamp > since) useShell.getState().need(null);
    };
    window.addEventListener('keydown', goneOn);
    window.addEventListener('pointerdown', goneOn);
    return () => {
      window.removeEventListener('keydown', goneOn);
      window.removeEventListener('pointerdown', goneOn);
    };
  }, [needed]);
  const saveNow = usePiece((state) => state.saveNow);
  const sayStill = () => {
    const { readOnly: still } = usePiece.getState();
    useShell.getState().say(still === null ? words.tookOver : `${words.stillOpenElsewhere} ${tell(still)}`);
  };
  return (
    <footer className="footer">
      <ul className="footer-keys" aria-label={words.keysHere}>
        {/* What was asked for and can't be done yet has their place, and what isn't saved. */}
        {(needed === null && notSaved === null ? hints : []).map((hint) => (
          <li key={hint.words}>
            {hint.keys.map((keys) => (
              <KeyCap key={keys} keys={keys} />
            ))}
            <span>{hint.words}</span>
          </li>
        ))}
      </ul>
      <div className="footer-middle">
        {notSaved !== null ? (
          <p role="alert" className="footer-not-saved">
            <strong>{words.notSaved}</strong> {notSaved.sentence} {notSaved.remedy}{' '}
            {notSaved.tag === 'changed-elsewhere' ? (
              <QuietButton onPress={() => void readAnew()}>{words.openAgain}</QuietButton>
            ) : (
              <QuietButton onPress={() => void saveNow()}>{words.tryAgain}</QuietButton>
            )}
          </p>
        ) : readOnly !== null ? (
          <p className="footer-not-saved">
            <strong>{words.readOnly}</strong> {tell(readOnly)}{' '}
            <QuietButton onPress={() => void takeOver().then(sayStill)}>{words.takeOver}</QuietButton>
          </p>
        ) : needed !== null ? (
          <p className="footer-needed">{needed}</p>
        ) : (
          aside !== undefined && <p className="second">{aside}</p>
        )}
      </div>
      <div className="footer-actions">
        {second && <SecondButton action={second} />}
        {main && <MainButton action={main} />}
      </div>
    </footer>
  );
}

/** The hint every screen can end with. */
export const useHelpHint = (): KeyHint => {
  const words = useWords().shell;
  return { keys: ['F1'], words: words.keys.help };
};

/** Opens the sheet of words and keys from anywhere. */
export const openHelp = (): void => useShell.getState().openSheet('words-and-keys');
