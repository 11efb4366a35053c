import { useCallback, useEffect, useRef, useState } from 'react';
import './camera.css';
import type { Piece } from '../../../core/model/piece.ts';
import { useCommands } from '../../keys/commandStore.ts';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import { type Advice, adviceFor, type Frame, frameQuality, toFrame } from './frameQuality.ts';
import { takeStill, useCamera } from './useCamera.ts';

interface CameraProps {
  readonly piece: Piece;
  readonly onTaken: (photo: Blob) => void;
  readonly onLeave: () => void;
}

/** Breadth of the small frame that is judged, px. */
const SMALL = 320;
const LOOK_EVERY_MS = 200;
/** Still and clear for this many looks in a row, and the picture is taken. */
const STEADY_LOOKS = 6;

/** The live picture with a guide in the loom's own proportions, and what to mend before taking it. */
export function Camera({ piece, onTaken, onLeave }: CameraProps) {
  const words = useWords().check;
  const video = useRef<HTMLVideoElement>(null);
  const { devices, device, chooseDevice, trouble, stream } = useCamera(video);
  const [advice, setAdvice] = useState<Advice | null>(null);
  const [steady, setSteady] = useState(true);
  const [looks, setLooks] = useState(0);
  const taking = useRef(false);
  const take = useCallback(async () => {
    if (taking.current || video.current === null) return;
    taking.current = true;
    const photo = await takeStill(video.current, stream);
    taking.current = false;
    if (photo !== null) onTaken(photo);
  }, [onTaken, stream]);
  useEffect(() => {
    const canvas = document.createElement('canvas');
    const pen = canvas.getContext('2d', { willReadFrequently: true });
    let before: Frame | null = null;
    const timer = setInterval(() => {
      const picture = video.current;
      if (picture === null || pen === null || picture.videoWidth === 0) return;
      const { videoWidth, videoHeight } = picture;
      const height = Math.round((SMALL * videoHeight) / videoWidth);
      canvas.width = SMALL;
      canvas.height = height;
      pen.drawImage(picture, 0, 0, SMALL, height);
      const frame = toFrame(pen.getImageData(0, 0, SMALL, height).data, SMALL, height);
      const [left, top] = [(videoWidth - SMALL) / 2, (videoHeight - height) / 2];
      pen.drawImage(picture, left, top, SMALL, height, 0, 0, SMALL, height);
      const middle = toFrame(pen.getImageData(0, 0, SMALL, height).data, SMALL, height);
      const said = adviceFor(frameQuality(frame, before, middle));
      before = frame;
      setAdvice(said);
      setLooks((count) => (said === 'good' ? count + 1 : 0));
    }, LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  useEffect(() => {
    if (steady && looks >= STEADY_LOOKS) void take();
  }, [steady, looks, take]);
  useEffect(() => {
    if (advice !== null) useShell.getState().say(words.advice[advice]);
  }, [advice, words]);
  useCommands('camera', [
    { id: 'take', words: words.take, keys: ['Space'], run: () => void take() },
    { id: 'steady', words: words.steady, keys: ['S'], run: () => setSteady(!steady) },
    { id: 'leave-camera', words: words.leaveCamera, keys: ['Escape'], run: onLeave },
  ]);
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
            ...(stream === null ? { notYet: trouble ?? words.cameraWaking } : {}),
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
        <Sentence>{trouble ?? (advice === null ? words.cameraWaking : words.advice[advice])}</Sentence>
        <p>{words.cameraLead}</p>
        <label className="camera-steady">
          <input type="checkbox" checked={steady} onChange={(event) => setSteady(event.target.checked)} />
          <span>{words.steady}</span>
        </label>
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
        <ul className="check-tips">
          {words.tips.map((tip) => (
            <li key={tip}>{tip}</li>
          ))}
        </ul>
      </section>
    </ScreenFrame>
  );
}
