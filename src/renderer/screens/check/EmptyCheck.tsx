import { lengthSaid } from '../../words/figures.ts';
import './emptyCheck.css';
import { useState } from 'react';
import { Sentence } from '../../parts/Sentence.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';
import { type Job, useChecks } from './checkStore.ts';
import { stageWords } from './stageWords.ts';
import { useBlobAddress } from './useBlobAddress.ts';
import { useHostImage } from './useHostImage.ts';

interface EmptyCheckProps {
  readonly over: boolean;
  readonly job: Job | null;
  readonly preview: Blob | null;
  readonly onCamera: () => void;
  readonly onChoose: () => void;
  readonly onWatch: () => void;
}

/** Before a photograph, and while one is being read. */
export function EmptyCheck({ over, job, preview, onCamera, onChoose, onWatch }: EmptyCheckProps) {
  const words = useWords().check;
  const watched = useSettings((state) => state.settings.watchedFolder);
  const { units, cloth } = usePiece((state) => state.piece) ?? { units: 'mm' as const, cloth: null };
  const headerHeight = cloth === null ? 4 : Math.max(2, cloth.headerPasses * cloth.passHeight);
  const problem = useChecks((state) => state.problem);
  const key = usePiece((state) => state.key);
  const hash = job?.hash ?? null;
  const kept = useHostImage(
    key === null || hash === null ? null : { call: 'photoImage', params: { key, hash, size: 'thumbnail' } },
  );
  const handed = useBlobAddress(preview);
  const address = hash === null ? handed : kept.address;
  const [unshown, setUnshown] = useState<string | null>(null);
  return (
    <>
      <div className={over ? 'check-drop is-over' : 'check-drop'}>
        {job === null && <p>{over ? words.letGo : words.dropHere}</p>}
        {job !== null && address !== null && address !== unshown && (
          <img src={address} alt={words.photographBeingRead} onError={() => setUnshown(address)} />
        )}
      </div>
      <section className="check-words" aria-label={words.wordsLabel}>
        <Sentence>
          {job !== null ? words.sentenceReading : problem !== null ? problem.sentence : words.sentenceNone}
        </Sentence>
        {job !== null ? (
          <>
            <p aria-live="polite">{stageWords(job, words)}</p>
            <progress className="check-progress" max={job.of || 1} value={job.of === 0 ? undefined : job.done}>
              {stageWords(job, words)}
            </progress>
            <p className="second">{words.escStops}</p>
          </>
        ) : (
          <>
            <p>{problem !== null ? problem.remedy : words.leadNone(lengthSaid(headerHeight, units))}</p>
            <ul className="check-ways">
              <li>
                <button type="button" onClick={onCamera}>
                  <Sign name="photograph" />
                  <span>
                    {words.wayCamera}
                    <span className="second">{words.wayCameraSecond}</span>
                  </span>
                </button>
              </li>
              <li>
                <button type="button" onClick={onChoose}>
                  <Sign name="open" />
                  <span>
                    {words.wayChoose}
                    <span className="second">{words.wayChooseSecond}</span>
                  </span>
                </button>
              </li>
              <li>
                <button type="button" onClick={onWatch}>
                  <Sign name="watch" />
                  <span>
                    {words.wayWatch}
                    <span className="second">{watched ?? words.wayWatchSecond}</span>
                  </span>
                </button>
              </li>
            </ul>
            <h2>{words.goodPhotograph}</h2>
            <ul className="check-tips">
              {words.tips.map((tip) => (
                <li key={tip}>{tip}</li>
              ))}
            </ul>
          </>
        )}
      </section>
    </>
  );
}
