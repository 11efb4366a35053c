import { useRef } from 'react';
import './choice.css';

interface ChoiceProps<Value extends string | number> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly onChoose: (value: Value) => void;
  /** Show the label before the words; it is always read out. */
  readonly showLabel?: boolean;
}

/** Two to four words, the chosen one in ink. Arrow keys move, as in any set of radio buttons. */
export function Choice<Value extends string | number>(props: ChoiceProps<Value>) {
  const { label, value, options, onChoose, showLabel = false } = props;
  const group = useRef<HTMLDivElement>(null);
  const move = (step: number) => {
    const at = options.findIndex((option) => option.value === value);
    const next = options[(at + step + options.length) % options.length];
    if (next === undefined) return;
    onChoose(next.value);
    group.current?.querySelectorAll<HTMLElement>('[role="radio"]')[options.indexOf(next)]?.focus();
  };
  return (
    <div className="choice-row">
      {showLabel && <span className="choice-label">{label}</span>}
      <div
        ref={group}
        className="choice"
        role="radiogroup"
        aria-label={label}
        onKeyDown={(event) => {
          if (event.key === 'ArrowRight' || event.key === 'ArrowDown') move(1);
          else if (event.key === 'ArrowLeft' || event.key === 'ArrowUp') move(-1);
          else return;
          event.preventDefault();
        }}
      >
        {options.map((option) => (
          // biome-ignore lint/a11y/useSemanticElements: one tab stop, drawn as words in a frame.
          <button
            key={option.value}
            type="button"
            role="radio"
            aria-checked={option.value === value}
            tabIndex={option.value === value ? 0 : -1}
            onClick={() => onChoose(option.value)}
          >
            {option.words}
          </button>
        ))}
      </div>
    </div>
  );
}
