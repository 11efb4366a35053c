import { useCallback, useEffect, useRef, useState } from 'react';
import './camera.css';
import type { Piece } from '../../../core/model/piece.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import { CameraTurns } from './CameraTurns.tsx';
import { liveCommands } from './checkCommands.ts';
import { takeStill } from './takeStill.ts';
import { useCamera } from './useCamera.ts';
import { useLivePicture } from './useLivePicture.ts';

interface CameraProps {
  readonly piece: Piece;
  /** The picture before this one could not be measured: the next is taken by hand, or the same would come of itself. */
  readonly afterRefusal: boolean;
  /** @param camera what the device calls itself; null when it has no name. */
  readonly onTaken: (photo: Blob, camera: string | null) => void;
  readonly onLeave: () => void;
}

/** The live picture with a guide in the loom's own proportions, and what to mend before taking it. */
export function Camera({ piece, afterRefusal, onTaken, onLeave }: CameraProps) {
  const all = useWords();
  const words = all.check;
  const video = useRef<HTMLVideoElement>(null);
  const { devices, device, chooseDevice, trouble, stream } = useCamera(video);
  const label = stream?.getVideoTracks()[0]?.label ?? '';
  const named = label === '' ? null : label.slice(0, 300);
  const [steady, setSteady] = useState(!afterRefusal);
  const [taking, setTaking] = useState(false);
  const [noPicture, setNoPicture] = useState(false);
  const busy = useRef(false);
  const take = useCallback(async () => {
    if (busy.current || video.current === null) return;
    busy.current = true;
    setTaking(true);
    const photo = await takeStill(video.current, stream);
    busy.current = false;
    setTaking(false);
    setNoPicture(photo === null);
    if (photo !== null) onTaken(photo, named);
  }, [onTaken, stream, named]);
  const advice = useLivePicture(video, stream, () => {
    if (steady) void take();
  });
  const sentence =
    trouble !== null
      ? words.cameraTrouble[trouble]
      : taking
        ? words.cameraTaking
        : noPicture
          ? words.cameraNoPicture
          : advice === null
            ? words.cameraWaking
            : words.advice[advice];
  useEffect(() => useShell.getState().say(sentence), [sentence]);
  useCommands(
    'camera',
    withRuns(liveCommands(all), {
      take: () => void take(),
      steady: () => setSteady(!steady),
      'leave-camera': onLeave,
    }),
  );
  return (
    <ScreenFrame
      className="check-screen"
      footer={
        <Footer
          hints={[
            { keys: ['Space'], words: words.keyTake },
            { keys: ['S'], words: words.keySteady },
            { keys: ['Escape'], words: words.keyLeave },
          ]}
          second={{ words: words.leaveCamera, onPress: onLeave }}
          main={{
            words: words.take,
            sign: 'photograph',
            onPress: () => void take(),
            ...(stream === null ? { notYet: sentence } : {}),
          }}
        />
      }
    >
      <div className="camera-view">
        <video ref={video} autoPlay muted playsInline aria-label={words.livePicture} />
        {stream !== null && (
          <svg
            className="camera-guide"
            viewBox={`0 0 ${piece.loom.openingWidth + 2 * piece.loom.bar} ${piece.loom.openingHeight + 2 * piece.loom.bar}`}
            aria-hidden="true"
          >
            <rect
              x={piece.loom.bar}
              y={piece.loom.bar}
              width={piece.loom.openingWidth}
              height={piece.loom.openingHeight}
              vectorEffect="non-scaling-stroke"
            />
          </svg>
        )}
      </div>
      <section className="check-words" aria-label={words.wordsLabel}>
        <Sentence>{sentence}</Sentence>
        {trouble === null && (
          <>
            <p>{afterRefusal ? words.cameraLeadAgain : words.cameraLead}</p>
            <label className="camera-steady">
              <input type="checkbox" checked={steady} onChange={(event) => setSteady(event.target.checked)} />
              <span>{words.steady}</span>
            </label>
          </>
        )}
        {devices.length > 1 && (
          <label className="camera-device">
            <span className="second">{words.camera}</span>
            <select value={device ?? ''} onChange={(event) => chooseDevice(event.target.value)}>
              {devices.map((each, index) => (
                <option key={each.deviceId} value={each.deviceId}>
                  {each.label === '' ? words.cameraNumber(index + 1) : each.label}
                </option>
              ))}
            </select>
          </label>
        )}
        {named !== null && <CameraTurns piece={piece} camera={named} />}
        <ul className="check-tips">
          {words.tips.map((tip) => (
            <li key={tip}>{tip}</li>
          ))}
        </ul>
      </section>
    </ScreenFrame>
  );
}
