import { useEffect, useRef } from 'react';
import './tour.css';
import { useCommands } from '../keys/commandStore.ts';
import { QuietButton } from '../parts/Actions.tsx';
import { screenNames, useShell } from '../state/shellStore.ts';
import { useWords } from '../words/useWords.ts';
import { useTour } from './tourStore.ts';

/** One step of the tour, in a strip under the bar: nothing is covered, and everything on the screen still answers. */
export function Tour() {
  const words = useWords().tour;
  const { at, goOn, leave } = useTour();
  const screen = useShell((state) => state.screen);
  const next = useRef<HTMLButtonElement>(null);
  // The bar may have been used meanwhile: the tour speaks of the screen that is there.
  const here = screenNames.indexOf(screen);
  useEffect(() => {
    if (at !== null && at !== here) useTour.setState({ at: here });
  }, [at, here]);
  useEffect(() => {
    const step = words.steps[here];
    if (step === undefined) return;
    next.current?.focus();
    useShell.getState().say(`${words.step(here + 1, words.steps.length)}. ${step.head}. ${step.text}`);
  }, [here, words]);
  useCommands('tour', [{ id: 'leave-tour', words: words.leave, run: leave }]);
  const step = words.steps[here];
  if (step === undefined) return null;
  return (
    <aside
      className="tour"
      aria-label={words.label}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        leave();
      }}
    >
      <p className="tour-step">{words.step(here + 1, words.steps.length)}</p>
      <p className="tour-words">
        <strong>{step.head}.</strong> {step.text}
      </p>
      <div className="tour-actions">
        <QuietButton onPress={leave}>{words.leave}</QuietButton>
        <button ref={next} type="button" className="second-action" onClick={goOn}>
          {here + 1 === words.steps.length ? words.done : words.next}
        </button>
      </div>
    </aside>
  );
}
