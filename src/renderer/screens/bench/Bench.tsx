import { type MouseEvent, useEffect, useState } from 'react';
import './bench.css';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { Sign } from '../../parts/Sign.tsx';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { countTurns, type Work, wholeTurns } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import { BenchPicture } from './BenchPicture.tsx';
import { benchCommands } from './benchCommands.ts';
import { type BenchMoment, benchMoment } from './benchMoment.ts';
import { Rounds } from './Rounds.tsx';
import { Tally } from './Tally.tsx';
import { speakStep, tap } from './tap.ts';
import { useRest } from './useRest.ts';

/** A button pressed by hand is let go again, so that the next press of the space bar is a turn done. */
const letGo = (event: MouseEvent<HTMLButtonElement>) => event.detail > 0 && event.currentTarget.blur();

/** What the big count counts. */
const unitOf = ({ together }: BenchMoment) =>
  together === null ? 'turn' : together.rounds.length === 1 ? 'round' : 'repeat';

/** Very large type to weave from: the count, what comes next, one key or a tap for a turn done. */
export function Bench({ work }: { readonly work: Work }) {
  const all = useWords();
  const words = all.bench;
  const { settings, change } = useSettings();
  const notSaved = usePiece((state) => state.notSaved);
  const readOnly = usePiece((state) => state.readOnly);
  const { setBare, say } = useShell.getState();
  const [ahead, setAhead] = useState(0);
  const rest = useRest();
  const turn = Math.max(0, Math.min(work.turns.length, work.turn + ahead));
  const moment = benchMoment(work, turn, all);
  const done = () => {
    if (ahead !== 0) return setAhead(0);
    if (readOnly !== null || work.turn >= work.turns.length) return;
    const next = benchMoment(work, work.turn + 1, all);
    if (settings.sound)
      tap(next === null || (moment !== null && next.stepIndex !== moment.stepIndex) ? 'move' : 'turn');
    countTurns(work, work.turn + 1);
    // Another weft is named; within a block the count is enough.
    const other = next !== null && next.block !== moment?.block;
    const name = other ? `${all.order.block(work.plan.blocks[next.block]!.name)}. ` : '';
    const sentence =
      next === null
        ? words.allDone
        : name + words.announce(unitOf(next), next.turnInStep, next.turnsInStep, next.from, next.to);
    say(sentence);
    if (settings.speech) speakStep(sentence, settings.language);
  };
  const back = () => {
    if (work.turn === 0 || readOnly !== null) return;
    if (settings.sound) tap('back');
    countTurns(work, work.turn - 1);
    setAhead(0);
    say(words.takenBack);
  };
  const leave = () => setBare(false);
  useCommands(
    'bench',
    withRuns(benchCommands(all), {
      'turn-done': done,
      'turn-back': back,
      'look-ahead': () => setAhead(ahead + 1),
      'look-back': () => setAhead(ahead - 1),
      'leave-bench': leave,
    }),
  );
  useEffect(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  }, []);
  const block = moment ? work.plan.blocks[moment.block] : undefined;
  const yarn = block ? work.piece.yarns[block.yarn] : undefined;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Space does the same, from the list of commands.
    <main
      className="bench"
      id="work"
      onClick={(event) => {
        if (event.target instanceof Element && event.target.closest('.bench-bar, button') === null) done();
      }}
    >
      <section className="bench-say">
        {moment === null || block === undefined ? (
          <>
            <h1 className="bench-block">{words.allDone}</h1>
            <p className="bench-going">{words.allDoneHint}</p>
          </>
        ) : (
          <>
            <header className="bench-head">
              <span className="bench-name">
                <Swatch colour={yarn?.colour ?? null} letter={yarnLetter(block.yarn)} size={36} />
                <h1 className="bench-block">{all.order.block(block.name)}</h1>
              </span>
              <span className="bench-yarn">{yarn?.name}</span>
              {/* Wefts that rise together are counted by the rounds they share. */}
              {moment.together === null && (
                <span className="bench-turn">{words.turnOf(moment.turnInBlock, moment.turnsInBlock)}</span>
              )}
            </header>
            <div className="bench-count-row">
              <span
                className={`bench-count${moment.together !== null ? ' is-round' : moment.turnInStep > 9 ? ' is-long' : ''}`}
              >
                {moment.turnInStep}
              </span>
              <p className="bench-over">
                {moment.together === null
                  ? moment.single
                    ? words.half
                    : words.of(moment.turnsInStep)
                  : moment.together.rounds.length === 1
                    ? words.ofRounds(moment.turnsInStep)
                    : words.ofRepeats(moment.turnsInStep)}
                <br />
                {words.over(moment.ends)}
                <br />
                <span className="bench-span">{moment.span}</span>
              </p>
            </div>
            <p className="bench-next">{moment.next}</p>
            <p className="bench-going">
              {moment.going} {moment.join && words.join}
            </p>
            <div className="bench-foot">
              {moment.together === null ? (
                <Tally work={work} moment={moment} />
              ) : (
                <Rounds work={work} together={moment.together} times={moment.turnsInStep} />
              )}
              <p className="bench-far">
                {words.far(
                  moment.block + 1,
                  work.plan.blocks.length,
                  all.order.turns(wholeTurns(work.turns.slice(turn))),
                )}
              </p>
            </div>
          </>
        )}
        {ahead !== 0 && (
          <p className="bench-ahead">
            {words.ahead}{' '}
            <button type="button" className="quiet-action" onClick={() => setAhead(0)}>
              {words.backToNow}
            </button>
          </p>
        )}
        {rest && <p className="bench-rest">{words.rest}</p>}
      </section>
      <BenchPicture work={work} turn={turn} />
      {/* The whole bar is the button: it can be hit without looking. */}
      <div className="bench-bar">
        <button type="button" className="bench-done" data-main-action onClick={done}>
          <span className="bench-done-word">{words.done}</span>
          <span className="bench-done-hint">
            {notSaved ? `${all.shell.notSaved} ${notSaved.sentence}` : words.doneHint}
          </span>
        </button>
        <button
          type="button"
          className="bench-small"
          aria-pressed={settings.sound}
          onClick={(event) => {
            letGo(event);
            change({ sound: !settings.sound });
          }}
        >
          {words.sound}
        </button>
        <button
          type="button"
          className="bench-small"
          aria-pressed={settings.speech}
          onClick={(event) => {
            letGo(event);
            change({ speech: !settings.speech });
          }}
        >
          {words.speech}
        </button>
        <button
          type="button"
          className="bench-back"
          onClick={(event) => {
            letGo(event);
            back();
          }}
        >
          <Sign name="undo" size={24} />
          {words.back}
        </button>
        <button type="button" className="bench-leave" onClick={leave}>
          {words.leave}
        </button>
      </div>
    </main>
  );
}
