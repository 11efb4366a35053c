import { type RefObject, useEffect, useRef, useState } from 'react';
import { type Advice, adviceFor, type Frame, frameQuality, toFrame } from './frameQuality.ts';
import { afterPicture, isSteady, unsteady } from './steadiness.ts';

/** Breadth of the small picture that is judged, px. */
const SMALL = 320;
/** Judging takes time: never more than a third of it, and five times a second at most. */
const LOOK_EVERY_MS = 200;
const SHARE = 3;
/** A camera that shows nothing new for so long has stopped. */
const STOPPED_MS = 4_000;

export type LiveAdvice = Advice | 'stopped';

/** The small picture and the middle at full size, in lightness. */
function framesOf(picture: HTMLVideoElement, pen: CanvasRenderingContext2D): readonly [small: Frame, middle: Frame] {
  const { videoWidth, videoHeight } = picture;
  const height = Math.max(1, Math.round((SMALL * videoHeight) / videoWidth));
  pen.canvas.width = SMALL;
  pen.canvas.height = height;
  pen.drawImage(picture, 0, 0, SMALL, height);
  const small = toFrame(pen.getImageData(0, 0, SMALL, height).data, SMALL, height);
  pen.drawImage(picture, (videoWidth - SMALL) / 2, (videoHeight - height) / 2, SMALL, height, 0, 0, SMALL, height);
  return [small, toFrame(pen.getImageData(0, 0, SMALL, height).data, SMALL, height)];
}

/**
 * Looks at each new picture of the camera and says what to mend; `onSteady` is called when it has been still and clear
 * long enough. Only new pictures count: the same one looked at twice would always seem still.
 */
export function useLivePicture(
  video: RefObject<HTMLVideoElement | null>,
  stream: MediaStream | null,
  onSteady: () => void,
): LiveAdvice | null {
  const [advice, setAdvice] = useState<LiveAdvice | null>(null);
  const steady = useRef(onSteady);
  steady.current = onSteady;
  useEffect(() => {
    const picture = video.current;
    const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    if (stream === null || picture === null || pen === null) return setAdvice(null);
    let before: Frame | null = null;
    let run = unsteady;
    let nextLook = 0;
    let newest = performance.now();
    let waiting = 0;
    const look = () => {
      waiting = picture.requestVideoFrameCallback(look);
      const begun = performance.now();
      newest = begun;
      if (begun < nextLook || picture.videoWidth === 0) return;
      const [small, middle] = framesOf(picture, pen);
      const said = adviceFor(frameQuality(small, before, middle));
      before = small;
      run = afterPicture(run, said, begun);
      setAdvice(said);
      const now = performance.now();
      nextLook = Math.max(begun + LOOK_EVERY_MS, now + SHARE * (now - begun));
      if (isSteady(run, now)) {
        run = unsteady;
        steady.current();
      }
    };
    waiting = picture.requestVideoFrameCallback(look);
    const watch = setInterval(() => {
      if (performance.now() - newest < STOPPED_MS) return;
      run = unsteady;
      before = null;
      setAdvice('stopped');
    }, 1_000);
    return () => {
      picture.cancelVideoFrameCallback(waiting);
      clearInterval(watch);
    };
  }, [video, stream]);
  return advice;
}
