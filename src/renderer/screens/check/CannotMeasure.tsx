import './cannotMeasure.css';
import type { Piece } from '../../../core/model/piece.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { CameraTurns } from './CameraTurns.tsx';
import { againCommand, markPointsCommand } from './checkCommands.ts';
import { type Look, useChecks } from './checkStore.ts';
import { useBlobAddress } from './useBlobAddress.ts';
import { useHostImage } from './useHostImage.ts';
import { wayOn } from './wayOn.ts';

interface CannotMeasureProps {
  readonly look: Look;
  readonly piece: Piece;
  /** The photograph as it was handed over, shown until the host's own picture is there. */
  readonly preview: Blob | null;
  readonly onAgain: () => void;
  readonly onFourPoints: () => void;
}

/** A photograph that can't be measured: why, in what was seen, and two ways on. Nothing is guessed. */
export function CannotMeasure({ look, piece, preview, onAgain, onFourPoints }: CannotMeasureProps) {
  const all = useWords();
  const words = all.check;
  const key = usePiece((state) => state.key);
  const { units } = piece;
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: look.hash, size: 'screen' } },
  );
  const problem = useChecks((state) => state.problem);
  const handed = useBlobAddress(preview);
  const address = image.address ?? handed;
  const [first, ...further] = look.reading.reasons;
  const way = wayOn(first, look.marks);
  const mended = isMended(look, piece);
  const points = look.reading.status === 'needs-reference';
  const letGo = () => useChecks.getState().letGo();
  const again = (mirrored?: boolean) => void useChecks.getState().measureAgain(mirrored);
  const main = mended
    ? { words: words.measureAgain, onPress: () => again() }
    : 'field' in way
      ? {
          words: way.field === 'ends' ? all.piece.changeWarp : all.piece.changeLoom,
          onPress: () => useShell.getState().goTo('piece', { field: way.field }),
        }
      : way.kind === 'photograph'
        ? { words: words.again, sign: 'photograph' as const, onPress: onAgain }
        : { words: words.markFourPoints, sign: 'fourPoints' as const, onPress: onFourPoints };
  const second =
    main.onPress === onAgain
      ? { words: words.markFourPoints, sign: 'fourPoints' as const, onPress: onFourPoints }
      : { words: words.again, sign: 'photograph' as const, onPress: onAgain };
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
          second={second}
          main={main}
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
                <strong>{mended ? words.mended : words.ways[way.kind]}</strong>{' '}
                {mended ? words.mendedHow : first === undefined ? words.takeAgainHow : tell(first.remedy)}
              </p>
              {!mended && way.kind === 'camera' ? (
                <CameraTurns piece={piece} camera={look.camera} doubted onAnswered={again} />
              ) : null}
              {!mended && <p className="second">{words.waysSecond(way.kind, look.camera !== null)}</p>}
            </div>
          </li>
          <li>
            <span className="way-number">2</span>
            {way.kind === 'marks' ? (
              <div>
                <p>
                  <strong>{words.orTakeAgain}</strong> {words.takeAgainHow}
                </p>
                <p className="second">{words.waysSecond('photograph', false)}</p>
              </div>
            ) : (
              <div>
                <p>
                  <strong>
                    {points && way.kind === 'photograph' ? words.markFourPointsNow : words.orMarkFourPoints}
                  </strong>{' '}
                  {words.touchCorners} {/* Where the footer has no room for it. */}
                  {main.onPress !== onFourPoints && second.onPress !== onFourPoints && (
                    <QuietButton onPress={onFourPoints}>{words.markFourPoints}</QuietButton>
                  )}
                </p>
                <p className="second">{words.pointsGive}</p>
              </div>
            )}
          </li>
        </ol>
      </section>
    </ScreenFrame>
  );
}

/** Whether loom, warp or cloth has been changed since the photograph was held against the piece. */
function isMended({ against }: Look, piece: Piece): boolean {
  if (against === null) return false;
  return piece.loom !== against.loom || piece.warp !== against.warp || piece.cloth !== against.cloth;
}
