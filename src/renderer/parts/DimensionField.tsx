import { useId, useState } from 'react';
import { flushSync } from 'react-dom';
import { lengthSaid, typedLength } from '../words/figures.ts';
import { tell } from '../words/telling.ts';
import { useWords } from '../words/useWords.ts';
import './dimensionField.css';
import type { LengthKind, LengthUnits } from '../../core/model/lengthWords.ts';
import { readLength } from '../../core/model/readLength.ts';
import { type Mm, mm } from '../../core/model/units.ts';
import { QuietButton } from './Actions.tsx';

interface DimensionFieldProps {
  /** Read out, for example `Height of the cloth`. */
  readonly label: string;
  /** Null while nothing was typed yet: the field is empty and shows `empty` as a hint. */
  readonly value: Mm | null;
  readonly empty?: string;
  readonly units: LengthUnits;
  readonly kind?: LengthKind;
  readonly onChange: (value: Mm) => void;
  /** Outside these, mm, it is refused in a sentence that names both. */
  readonly least?: number;
  readonly most?: number;
  /** A sentence when the value can't be, for example wider than the loom; null when it can. */
  readonly refuse?: (value: Mm) => string | null;
  /** Arrow keys move it by this much; the drawing's own step, such as one notch. */
  readonly step?: Mm;
  /** The loom as measured differs: shown in the cloth colour, with one press to take it over. */
  readonly measured?: { readonly value: Mm; readonly words: string };
  /** A small word after the figure: `wide`, `tall`. */
  readonly after?: string;
  /** What the sheet it stands in is opened for. */
  readonly first?: boolean;
}

/** A size typed on its dimension line: millimetres, centimetres, or inches with fractions. */
export function DimensionField(props: DimensionFieldProps) {
  const {
    label,
    value,
    units,
    kind = 'planned',
    onChange,
    least = 0,
    most,
    refuse,
    step,
    measured,
    after,
    empty,
    first = false,
  } = props;
  const words = useWords().shell;
  const [typed, setTyped] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const sentence = useId();
  const said = value === null ? '' : typedLength(value, units, kind);
  const shown = typed ?? said;
  const beyond = (next: Mm): string | null =>
    most !== undefined && (next < least || next > most)
      ? words.lengthRefusal(lengthSaid(least, units, kind), lengthSaid(most, units, kind))
      : null;
  const offer = (next: Mm): boolean => {
    const why = beyond(next) ?? refuse?.(next) ?? null;
    setRefused(why);
    if (why === null && (value === null || Math.abs(next - value) > 1e-9)) onChange(next);
    return why === null;
  };
  const finish = () => {
    if (typed === null) return;
    if (typed === said) {
      setRefused(null);
      return setTyped(null);
    }
    const read = readLength(typed, units);
    if (!read.ok) return setRefused(tell(`${read.problem.sentence} ${read.problem.remedy}`));
    if (offer(read.value)) setTyped(null);
  };
  const nudge = (direction: 1 | -1) => {
    if (step === undefined) return;
    setTyped(null);
    offer(mm(Math.max(0, (value ?? 0) + direction * step)));
  };
  const state = refused !== null ? 'refused' : measured !== undefined ? 'differs' : 'editable';
  return (
    <span className={`dimension is-${state}`}>
      <span className="dimension-line">
        <input
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          aria-label={label}
          data-first={first ? true : undefined}
          aria-invalid={refused !== null}
          aria-describedby={refused !== null ? sentence : undefined}
          value={shown}
          placeholder={empty}
          size={Math.max(4, (shown || (empty ?? '')).length)}
          onFocus={(event) => event.target.select()}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={finish}
          onKeyDown={(event) => {
            if (event.key === 'Enter') finish();
            else if (event.key === 'Escape') {
              const untouched = refused === null && (typed === null || typed === said);
              // At once, or leaving the field would give on what was typed.
              flushSync(() => {
                setTyped(null);
                setRefused(null);
              });
              event.currentTarget.blur();
              // With nothing to take back the press is for the sheet the field stands in.
              if (untouched) return;
            } else if (event.key === 'ArrowUp' && step !== undefined) nudge(1);
            else if (event.key === 'ArrowDown' && step !== undefined) nudge(-1);
            else return;
            event.preventDefault();
            event.stopPropagation();
          }}
        />
        {after !== undefined && <span className="dimension-after">{after}</span>}
      </span>
      {refused !== null && (
        <span id={sentence} className="dimension-sentence" role="alert">
          {refused}
        </span>
      )}
      {refused === null && measured !== undefined && (
        <QuietButton onPress={() => offer(measured.value)}>{measured.words}</QuietButton>
      )}
    </span>
  );
}

/** A size that follows from the others: shown on its line, not for typing. */
export function DerivedDimension({ label, words }: { readonly label: string; readonly words: string }) {
  return (
    <span className="dimension is-derived">
      <span className="out-of-sight">{label}: </span>
      {words}
    </span>
  );
}
