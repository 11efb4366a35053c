import { useLayoutEffect, useRef, useState } from 'react';
import './bar.css';
import { usePiece } from '../state/pieceStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { type ScreenName, screenNames, useShell } from '../state/shellStore.ts';
import { useWords } from '../words/useWords.ts';
import { BarTicks } from './BarTicks.tsx';
import { Bob } from './Bob.tsx';
import { Choice } from './Choice.tsx';
import { LanguageChoice } from './LanguageChoice.tsx';
import { Sign } from './Sign.tsx';

interface BarProps {
  /** Screens with something the weaver should look at. */
  readonly flagged: readonly ScreenName[];
}

/**
 * The notched bar: the piece, the five words with the bob under the current one, undo, redo, millimetres or inches; while
 * no piece is open, the language, where a newcomer meets it.
 */
export function Bar({ flagged }: BarProps) {
  const words = useWords().shell;
  const { screen, goTo, openSheet } = useShell();
  const { piece, past, future, undo, redo, change } = usePiece();
  const { settings, change: changeSettings } = useSettings();
  const units = piece?.units ?? settings.units;
  const setUnits = (next: 'mm' | 'in') => {
    changeSettings({ units: next });
    if (piece !== null) change((before) => ({ ...before, units: next }));
  };
  const nav = useRef<HTMLElement>(null);
  const [bobAt, setBobAt] = useState<number | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the words move with language and text size too.
  useLayoutEffect(() => {
    const place = () => {
      const current = nav.current?.querySelector<HTMLElement>('[aria-current="page"]');
      const bar = current?.closest('header');
      if (!current || !bar) return setBobAt(null);
      const box = current.getBoundingClientRect();
      setBobAt(box.left + box.width / 2 - bar.getBoundingClientRect().left);
    };
    place();
    window.addEventListener('resize', place);
    void document.fonts.ready.then(place);
    return () => window.removeEventListener('resize', place);
  }, [screen, piece?.name, settings.language, settings.textSize, flagged.length]);
  return (
    <header className="bar">
      <div className="bar-row">
        {piece === null ? (
          <span className="bar-name">{words.appName}</span>
        ) : (
          <button
            type="button"
            className="bar-name"
            aria-haspopup="dialog"
            aria-label={words.piecesOf(piece.name)}
            onClick={() => openSheet('pieces')}
          >
            <span className="bar-name-words">{piece.name}</span>
            <Sign name="more" size={18} />
          </button>
        )}
        <nav ref={nav} className="bar-words" aria-label={words.appName}>
          {screenNames.map((name) => (
            <button
              key={name}
              type="button"
              aria-current={piece !== null && name === screen ? 'page' : undefined}
              onClick={() => goTo(name)}
            >
              {/* The bold twin keeps each word's room, so nothing shifts when it becomes current. */}
              <span className="bar-word" data-words={words.screens[name]}>
                {words.screens[name]}
              </span>
              {flagged.includes(name) && (
                <>
                  <Sign name="mend" size={18} />
                  <span className="out-of-sight">, {words.flagWaiting}</span>
                </>
              )}
            </button>
          ))}
        </nav>
        <div className="bar-end">
          {piece === null ? (
            <LanguageChoice />
          ) : (
            <>
              <button type="button" className="bar-undo" aria-disabled={past.length === 0} onClick={undo}>
                <Sign name="undo" size={20} />
                <span>{words.undo}</span>
              </button>
              <button
                type="button"
                className="bar-redo"
                aria-disabled={future.length === 0}
                onClick={redo}
                aria-label={words.redo}
                title={words.redoTip}
              >
                <Sign name="redo" size={20} />
              </button>
            </>
          )}
          <Choice
            label={words.units}
            value={units}
            options={[
              { value: 'mm', words: words.millimetres },
              { value: 'in', words: words.inches },
            ]}
            onChoose={setUnits}
          />
        </div>
      </div>
      <BarTicks />
      {bobAt !== null && (
        <svg
          className="bar-bob"
          aria-hidden="true"
          style={{ transform: `translateX(${bobAt}px)` }}
          viewBox="-8 0 16 22"
        >
          <path d="M0 0V6" stroke="currentColor" strokeWidth="2" />
          <g transform="translate(0 5)">
            <Bob scale={0.8} />
          </g>
        </svg>
      )}
    </header>
  );
}
