import './cannotMeasure.css';
import type { ReasonCode } from '../../../core/model/check.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { againCommand, markPointsCommand } from './checkCommands.ts';
import { type Look, useChecks } from './checkStore.ts';
import { useBlobAddress } from './useBlobAddress.ts';
import { useHostImage } from './useHostImage.ts';

/** What another photograph of the same loom would show again. */
const inThePlan: readonly ReasonCode[] = ['wrong-count', 'wrong-pitch'];

interface CannotMeasureProps {
  readonly look: Look;
  /** The photograph as it was handed over, shown until the host's own picture is there. */
  readonly preview: Blob | null;
  readonly onAgain: () => void;
  readonly onFourPoints: () => void;
}

/** A photograph that can't be measured: why, in what was seen, and two ways on. Nothing is guessed. */
export function CannotMeasure({ look, preview, onAgain, onFourPoints }: CannotMeasureProps) {
  const all = useWords();
  const words = all.check;
  const key = usePiece((state) => state.key);
  const units = usePiece((state) => state.piece?.units ?? 'mm');
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: look.hash, size: 'screen' } },
  );
  const problem = useChecks((state) => state.problem);
  const handed = useBlobAddress(preview);
  const address = image.address ?? handed;
  const [first, ...further] = look.reading.reasons;
  const plan = first !== undefined && inThePlan.includes(first.code);
  const points = look.reading.status === 'needs-reference';
  const letGo = () => useChecks.getState().letGo();
  useCommands('cannot-measure', [
    ...withRuns(againCommand(all), { camera: onAgain }),
    ...withRuns(markPointsCommand(all, ['4', 'M']), { 'four-points': onFourPoints }),
    { id: 'let-go', words: words.letItGo, keys: ['Delete'], run: letGo },
  ]);
  return (
    <ScreenFrame
      className="cannot-measure"
      footer={
        <Footer
          hints={[
            { keys: ['Space'], words: words.keyTake },
            { keys: ['4'], words: words.keyFourPoints },
            { keys: ['Delete'], words: words.keyLetGo },
          ]}
          second={{ words: words.markFourPoints, sign: 'fourPoints', onPress: onFourPoints }}
          main={{ words: words.again, sign: 'photograph', onPress: onAgain }}
        />
      }
    >
      <figure className="cannot-measure-photo">
        {address !== null ? (
          <img src={address} alt={words.photographNotMeasured} />
        ) : (
          <p className="second">{image.problem}</p>
        )}
        {look.rendered && <figcaption className="photograph-label">{words.rendered}</figcaption>}
      </figure>
      <section className="cannot-measure-words" aria-label={words.wordsLabel}>
        <Sentence size="large">{first === undefined ? words.sentenceNotMeasured : tell(first.message[units])}</Sentence>
        <div className="cannot-measure-lead">
          {further.map((reason) => (
            <p key={reason.code}>
              {tell(reason.message[units])} {tell(reason.remedy)}
            </p>
          ))}
          <p>{words.nothingGuessed}</p>
          {problem !== null && (
            <p role="alert">
              {problem.sentence} {problem.remedy}
            </p>
          )}
        </div>
        <ol className="cannot-measure-ways">
          <li>
            <span className="way-number">1</span>
            <div>
              <p>
                <strong>{plan ? words.mendPlan : words.takeAgain}</strong>{' '}
                {first === undefined ? words.takeAgainHow : tell(first.remedy)}
              </p>
              <p className="second">{plan ? words.mendPlanWhere : words.takeAgainSecond}</p>
            </div>
          </li>
          <li>
            <span className="way-number">2</span>
            <div>
              <p>
                <strong>{points ? words.markFourPointsNow : words.orMarkFourPoints}</strong> {words.touchCorners}
              </p>
              <p className="second">{words.pointsGive}</p>
            </div>
          </li>
        </ol>
      </section>
    </ScreenFrame>
  );
}
