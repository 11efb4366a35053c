import { useEffect, useState } from 'react';
import './firstRun.css';
import { freeName } from '../../../core/cartoon/newShape.ts';
import type { Problem } from '../../../core/model/outcome.ts';
import { useCommands } from '../../keys/commandStore.ts';
import { Footer, useHelpHint } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { Sign, type SignName } from '../../parts/Sign.tsx';
import { chooseFile, isKeptPiece, isPhotograph, photographTypes, useFileDrop } from '../../parts/useFileDrop.ts';
import { newPiece } from '../../state/newPiece.ts';
import { choosePieceFolder, createPiece, importPiece, openPiece, openSample } from '../../state/pieceActions.ts';
import { useRecent } from '../../state/recentStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWaitingPhoto } from '../../state/waitingPhoto.ts';
import { useTour } from '../../tour/tourStore.ts';
import { pieceInWords } from '../../words/pieceInWords.ts';
import { useWords } from '../../words/useWords.ts';
import { EmptyLoom } from './EmptyLoom.tsx';

/** First run, and whenever no piece is open. */
export function Screen() {
  const all = useWords();
  const words = all.firstRun;
  const { pieces, shell, load } = useRecent();
  const screen = useShell((state) => state.screen);
  const waiting = useWaitingPhoto((state) => state.file);
  const { units, tourDone } = useSettings((state) => state.settings);
  const help = useHelpHint();
  const [problem, setProblem] = useState<Problem | null>(null);
  const [opening, setOpening] = useState(false);
  useEffect(() => void load(), [load]);
  const run = (act: () => Promise<Problem | null>) => {
    setOpening(true);
    void act().then((trouble) => {
      setProblem(trouble);
      setOpening(false);
      if (trouble !== null) useShell.getState().say(`${trouble.sentence} ${trouble.remedy}`);
    });
  };
  const taken = pieces.map((piece) => piece.name);
  const start = () =>
    run(() => createPiece(newPiece(freeName(words.newName, taken), units, new Date().toISOString(), words.called)));
  const takeFile = (file: File) => {
    if (isKeptPiece(file.name)) run(() => importPiece(file));
    else if (isPhotograph(file.name)) {
      useWaitingPhoto.getState().wait(file);
      start();
    } else setProblem({ tag: 'not-a-piece', sentence: words.notAPiece, remedy: '' });
  };
  const over = useFileDrop(takeFile);
  const open = () => (shell === 'electron' ? run(choosePieceFolder) : chooseFile('.zip,.plumbweft', takeFile));
  const sample = () => run(openSample);
  const tour = () => run(useTour.getState().begin);
  useCommands('first-run', [
    { id: 'open', words: words.open, keys: ['O'], run: open },
    { id: 'sample', words: words.sample, keys: ['L'], run: sample },
    { id: 'start', words: words.start, keys: ['N'], run: start },
  ]);
  const row = (sign: SignName, title: string, second: string, press: () => void) => (
    <li>
      <button type="button" onClick={press}>
        <Sign name={sign} />
        <span>
          <span className="first-run-title">{title}</span>
          <span className="second">{second}</span>
        </span>
      </button>
    </li>
  );
  const openSecond = shell === 'electron' ? words.openSecondFolder : words.openSecond;
  return (
    <ScreenFrame
      className="first-run"
      footer={
        <Footer
          hints={[{ keys: ['O'], words: words.keyOpen }, { keys: ['L'], words: words.keySample }, help]}
          main={{ words: words.start, sign: 'add', onPress: start, ...(opening ? { working: words.opening } : {}) }}
        />
      }
    >
      <div className="first-run-loom">
        <EmptyLoom label={words.drawing} />
      </div>
      <div className="first-run-words">
        <Sentence size="welcome">{over ? words.dropHere : words.sentence}</Sentence>
        {problem !== null ? (
          <p className="first-run-lead" role="alert">
            {problem.sentence} {problem.remedy}
          </p>
        ) : (
          <p className="first-run-lead">
            {waiting !== null
              ? words.photographFirst
              : screen === 'piece'
                ? words.lead
                : all.shell.needsPiece(all.shell.screens[screen])}
          </p>
        )}
        <ul className="first-run-rows">
          {row('open', words.open, openSecond, open)}
          {row('photograph', words.photograph, words.photographSecond, () => chooseFile(photographTypes, takeFile))}
          {row('fell', words.sample, words.sampleSecond, sample)}
          {!tourDone && row('turn', all.tour.offer, all.tour.offerSecond, tour)}
        </ul>
        {pieces.length > 0 && (
          <section aria-labelledby="recent-pieces">
            <h2 id="recent-pieces">{words.recent}</h2>
            <ul className="first-run-recent">
              {pieces.slice(0, 4).map((each) => (
                <li key={each.key}>
                  <button type="button" disabled={!each.available} onClick={() => run(() => openPiece(each.key))}>
                    <span>{each.name}</span>
                    <span className="second">
                      {each.available ? pieceInWords(each, pieces, all.shell) : all.shell.notFound}
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </ScreenFrame>
  );
}
