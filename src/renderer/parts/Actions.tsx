import { type ReactNode, useId } from 'react';
import './actions.css';
import { Sign, type SignName } from './Sign.tsx';

export interface Action {
  readonly words: string;
  readonly sign?: SignName;
  readonly onPress: () => void;
}

export interface MainAction extends Action {
  /** Says what is being done, for example `Finding strings, 19 of 33`; pressing stops it when `onStop` is given. */
  readonly working?: string;
  readonly onStop?: () => void;
  /** Why it can't be done yet, in words; the button stays focusable. */
  readonly notYet?: string;
}

/** The one main action of a screen: always in the bottom right corner. */
export function MainButton({ action }: { readonly action: MainAction }) {
  const reason = useId();
  const state = action.working !== undefined ? 'working' : action.notYet !== undefined ? 'not-yet' : 'rest';
  const press = () => {
    if (state === 'rest') action.onPress();
    if (state === 'working') action.onStop?.();
  };
  const sign = state === 'working' ? 'watch' : action.sign;
  return (
    <>
      {action.notYet !== undefined && (
        <span id={reason} className="second not-yet-reason">
          {action.notYet}
        </span>
      )}
      <button
        type="button"
        className={`main-action is-${state}`}
        data-main-action
        aria-disabled={state === 'not-yet'}
        aria-describedby={state === 'not-yet' ? reason : undefined}
        onClick={press}
      >
        {sign && <Sign name={sign} />}
        <span>{action.working ?? action.words}</span>
      </button>
    </>
  );
}

/** Beside the main action: outlined. */
export function SecondButton({ action, label }: { readonly action: Action; readonly label?: string }) {
  return (
    <button type="button" className="second-action" onClick={action.onPress} aria-label={label}>
      {action.sign && <Sign name={action.sign} size={22} />}
      <span>{action.words}</span>
    </button>
  );
}

/** Underlined words: done seldom, or small. */
export function QuietButton({
  children,
  onPress,
  label,
}: {
  readonly children: ReactNode;
  readonly onPress: () => void;
  readonly label?: string;
}) {
  return (
    <button type="button" className="quiet-action" onClick={onPress} aria-label={label}>
      {children}
    </button>
  );
}
