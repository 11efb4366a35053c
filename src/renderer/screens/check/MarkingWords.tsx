import { useRef } from 'react';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { type Mm, mm } from '../../../core/model/units.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { useWords } from '../../words/useWords.ts';
import { cardOf, lengthsOf, lettersOf, type Marking, takesLength } from './marking.ts';

interface MarkingWordsProps {
  readonly marking: Marking;
  readonly sentence: string;
  readonly units: LengthUnits;
  readonly onAskLength: () => void;
  readonly onAskCard: () => void;
  readonly onLength: (thing: number, length: Mm) => void;
  readonly onTakeAway: (thing: number) => void;
}

/** Beside the photograph: what to touch, and what else can be marked. */
export function MarkingWords(props: MarkingWordsProps) {
  const { marking, sentence, units, onAskLength, onAskCard, onLength, onTakeAway } = props;
  const words = useWords().check;
  const more = useRef<HTMLElement>(null);
  const lengths = lengthsOf(marking);
  const card = cardOf(marking) >= 0;
  const takeAway = (thing: number) => {
    // The button goes with its length; the focus stays near.
    more.current?.focus();
    onTakeAway(thing);
  };
  return (
    <section className="check-words" aria-label={words.wordsLabel}>
      <Sentence>{sentence}</Sentence>
      <p>{words.pointsLead}</p>
      <p className="second">{words.pointsGive}</p>
      <section ref={more} tabIndex={-1} className="mark-more" aria-label={words.markMore}>
        <h2>{words.markMore}</h2>
        <p className="second">{words.markMoreWhy}</p>
        {lengths.length > 0 && (
          <ul className="mark-more-lengths">
            {lengths.map(({ thing, length }) => {
              const label = words.howLong(lettersOf(marking, thing));
              return (
                <li key={thing}>
                  <span>{label}</span>
                  <DimensionField
                    label={label}
                    value={length}
                    units={units}
                    kind="edge"
                    empty={words.howLongHint[units]}
                    onChange={(next) => onLength(thing, next)}
                    least={1}
                    most={3_000}
                    step={mm(1)}
                  />
                  <QuietButton onPress={() => takeAway(thing)} label={words.takeLengthAway(label)}>
                    {words.takeAway}
                  </QuietButton>
                </li>
              );
            })}
          </ul>
        )}
        {card && <p>{words.cardHow}</p>}
        <p className="mark-more-ways">
          {takesLength(marking) && (
            <QuietButton onPress={onAskLength}>{words.markLength(lengths.length > 0)}</QuietButton>
          )}
          <QuietButton onPress={onAskCard}>{words.markCard(card)}</QuietButton>
        </p>
      </section>
    </section>
  );
}
