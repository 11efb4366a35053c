import { type KeyboardEvent, type ReactNode, useId, useState } from 'react';
import { flushSync } from 'react-dom';
import { numberSaid, typedFigure } from '../words/figures.ts';
import { useWords } from '../words/useWords.ts';
import { readTypedNumber } from './readTypedNumber.ts';
import './fields.css';

/** A row of a sheet: what it is at the left, what one types at the right. */
export function FieldRow({
  label,
  children,
  after,
}: {
  readonly label: string;
  readonly children: ReactNode;
  readonly after?: string;
}) {
  return (
    <div className="field-row">
      <span className="field-label">{label}</span>
      <span className="field-place">
        {children}
        {after !== undefined && <span className="field-after second">{after}</span>}
      </span>
    </div>
  );
}

/**
 * Enter gives on what is typed; Esc takes it back and leaves the field. With nothing to take back the press goes on to
 * the sheet the field stands in.
 */
function fieldKeys(event: KeyboardEvent<HTMLInputElement>, typing: boolean, finish: () => void, takeBack: () => void) {
  if (event.key === 'Enter') finish();
  if (event.key !== 'Escape') return;
  if (typing) {
    // At once, or leaving the field would give on what was typed.
    flushSync(takeBack);
    event.preventDefault();
    event.stopPropagation();
  }
  event.currentTarget.blur();
}

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** Words: kept as they are typed, given on when the field is left. */
export function TextField({ label, value, onChange }: TextFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const finish = () => {
    if (typed !== null && typed.trim() !== '' && typed !== value) onChange(typed.trim().slice(0, 200));
    setTyped(null);
  };
  return (
    <FieldRow label={label}>
      <input
        className="field is-words"
        aria-label={label}
        value={typed ?? value}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={finish}
        onKeyDown={(event) => fieldKeys(event, typed !== null && typed !== value, finish, () => setTyped(null))}
      />
    </FieldRow>
  );
}

interface NumberFieldProps {
  readonly label: string;
  readonly value: number | null;
  /** Smallest and largest it may be; whole numbers only when `whole`. */
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
  readonly after?: string;
  /** Whether it may be left empty: then `null` is given on. */
  readonly maybe?: boolean;
  /** What the sheet it stands in is opened for. */
  readonly first?: boolean;
  readonly onChange: (value: number | null) => void;
}

/** A number that isn't a length. A number that can't be is refused in a sentence and the old one stays. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, least, most, whole = false, after, maybe = false, first = false, onChange } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const words = useWords().shell;
  const [refused, setRefused] = useState(false);
  const sentence = useId();
  const shown = typed ?? (value === null ? '' : typedFigure(value));
  const finish = () => {
    if (typed === null) return;
    if (typed.trim() === '' && maybe) {
      onChange(null);
      setTyped(null);
      return setRefused(false);
    }
    const read = readTypedNumber(typed);
    if (read === null || read < least || read > most || (whole && !Number.isInteger(read))) return setRefused(true);
    setRefused(false);
    setTyped(null);
    if (read !== value) onChange(read);
  };
  return (
    <FieldRow label={label} {...(after === undefined ? {} : { after })}>
      <input
        className="field"
        inputMode="decimal"
        aria-label={label}
        data-first={first ? true : undefined}
        aria-invalid={refused}
        aria-describedby={refused ? sentence : undefined}
        value={shown}
        size={7}
        onFocus={(event) => event.target.select()}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={finish}
        onKeyDown={(event) =>
          fieldKeys(event, typed !== null, finish, () => {
            setTyped(null);
            setRefused(false);
          })
        }
      />
      {refused && (
        <span id={sentence} className="field-refused" role="alert">
          {(whole ? words.wholeNumberRefusal : words.numberRefusal)(limit(least), limit(most))}
        </span>
      )}
    </FieldRow>
  );
}

/** A bound as a figure is read, not as it is typed: `100 000`. */
const limit = (value: number): string => (Number.isInteger(value) ? numberSaid(value) : typedFigure(value));

interface SelectFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly onChange: (value: Value) => void;
}

/** One of a few words, where there are too many to stand side by side. */
export function SelectField<Value extends string>({ label, value, options, onChange }: SelectFieldProps<Value>) {
  return (
    <FieldRow label={label}>
      <select
        className="field is-select"
        aria-label={label}
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen) onChange(chosen.value);
        }}
        onKeyDown={(event) => event.key === 'Escape' && event.currentTarget.blur()}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </FieldRow>
  );
}
