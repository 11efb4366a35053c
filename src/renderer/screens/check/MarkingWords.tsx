import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { type Mm, mm } from '../../../core/model/units.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { useWords } from '../../words/useWords.ts';
import type { Marking } from './marking.ts';

interface MarkingWordsProps {
  readonly marking: Marking;
  readonly sentence: string;
  readonly units: LengthUnits;
  readonly onAsk: (group: 'length' | 'card') => void;
  readonly onLength: (length: Mm) => void;
}

/** Beside the photograph: what to touch, and what else can be marked. */
export function MarkingWords({ marking, sentence, units, onAsk, onLength }: MarkingWordsProps) {
  const words = useWords().check;
  const length = marking.asked.includes('length');
  const card = marking.asked.includes('card');
  return (
    <section className="check-words" aria-label={words.wordsLabel}>
      <Sentence size="large">{sentence}</Sentence>
      <p>{words.pointsLead}</p>
      <p className="second">{words.pointsGive}</p>
      <section className="mark-more" aria-label={words.markMore}>
        <h2>{words.markMore}</h2>
        <p className="second">{words.markMoreWhy}</p>
        {length && (
          <p className="mark-more-length">
            <span>{words.howLong}</span>
            <DimensionField
              label={words.howLong}
              value={marking.length}
              units={units}
              kind="edge"
              onChange={onLength}
              refuse={(value) => (value > 0 && value <= LONGEST ? null : words.lengthRefused)}
              step={mm(1)}
            />
          </p>
        )}
        <p className="mark-more-ways">
          <QuietButton onPress={() => onAsk('length')}>{words.markLength(length)}</QuietButton>
          <QuietButton onPress={() => onAsk('card')}>{words.markCard(card)}</QuietButton>
        </p>
      </section>
    </section>
  );
}

const LONGEST = 3_000;
