import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import './fourPoints.css';
import type { Piece } from '../../../core/model/piece.ts';
import { type PhotoPoint, photoPx } from '../../../core/model/units.ts';
import { useCommands } from '../../keys/commandStore.ts';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import type { Look } from './checkStore.ts';
import { cornerNames, fitOf } from './fourPoints.ts';
import { MagnifierGlass } from './MagnifierGlass.tsx';
import type { PlainPoint } from './plainPoint.ts';
import { useHostImage } from './useHostImage.ts';

interface FourPointsProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly start: readonly PhotoPoint[] | null;
  readonly onMeasure: (points: readonly PhotoPoint[]) => void;
  readonly onLeave: () => void;
}

/** The four inner corners of the frame, marked by hand: by finger, by mouse, or by Tab and arrow keys. */
export function FourPoints({ look, piece, start, onMeasure, onLeave }: FourPointsProps) {
  const words = useWords().check;
  const key = usePiece((state) => state.key);
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: look.hash, size: 'full' } },
  );
  const [points, setPoints] = useState<readonly (PlainPoint | null)[]>(start ?? [null, null, null, null]);
  const [held, setHeld] = useState<number | null>(null);
  const next = points.indexOf(null);
  const scale = image.width === 0 ? 1 : Math.min(width / image.width, height / image.height);
  const left = (width - image.width * scale) / 2;
  const top = (height - image.height * scale) / 2;
  const placed = points.filter((point) => point !== null);
  const fit = placed.length === 4 ? fitOf(placed, piece.loom.openingWidth, piece.loom.openingHeight) : null;
  const put = (index: number, point: PlainPoint) => {
    const inside = {
      x: Math.min(Math.max(point.x, 0), image.width),
      y: Math.min(Math.max(point.y, 0), image.height),
    };
    setPoints((before) => before.map((each, at) => (at === index ? inside : each)));
  };
  const fromEvent = (event: PointerEvent): PlainPoint => {
    const place = box.current?.getBoundingClientRect();
    return {
      x: (event.clientX - (place?.left ?? 0) - left) / scale,
      y: (event.clientY - (place?.top ?? 0) - top) / scale,
    };
  };
  const nearest = (point: PlainPoint): number => {
    const near = points.findIndex(
      (each) => each !== null && Math.hypot(each.x - point.x, each.y - point.y) * scale < 24,
    );
    return near >= 0 ? near : next;
  };
  const nudge = (event: KeyboardEvent, index: number) => {
    const step = event.shiftKey ? 10 : 1;
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    // A corner not marked yet starts near where that corner of the picture is.
    const guess = {
      x: image.width * (index === 0 || index === 3 ? 0.15 : 0.85),
      y: image.height * (index < 2 ? 0.85 : 0.15),
    };
    const from = points[index] ?? guess;
    put(index, { x: from.x + move[0], y: from.y + move[1] });
  };
  const finish = () => {
    if (placed.length === 4) onMeasure(placed.map((point) => ({ x: photoPx(point.x), y: photoPx(point.y) })));
  };
  const takeBack = () => {
    const last = points.reduce((found, point, index) => (point === null ? found : index), -1);
    if (last >= 0) setPoints(points.map((each, at) => (at === last ? null : each)));
  };
  useCommands('four-points', [
    { id: 'leave-points', words: words.leavePoints, keys: ['Escape'], run: onLeave },
    { id: 'take-back-point', words: words.takeBackPoint, keys: ['Backspace', 'Delete'], run: takeBack },
  ]);
  const sentence =
    fit === null
      ? words.markCorner(words.corners[cornerNames[Math.max(0, next)]!])
      : fit.kind === 'fits'
        ? words.pointsFit
        : fit.kind === 'doubtful'
          ? words.pointsDoubtful(Math.round(Math.abs(fit.tooWide) * 100), fit.tooWide > 0)
          : fit.kind === 'mirrored'
            ? words.pointsMirrored
            : words.pointsCrossed;
  const notYet =
    placed.length < 4
      ? words.pointsLeft(4 - placed.length)
      : fit?.kind === 'crossed' || fit?.kind === 'mirrored'
        ? sentence
        : undefined;
  return (
    <ScreenFrame
      className="check-screen"
      footer={
        <Footer
          hints={[
            { keys: ['Tab'], words: words.keyNextCorner },
            { keys: ['ArrowLeft', 'ArrowRight'], words: words.keyNudge },
            { keys: ['Backspace'], words: words.keyTakeBack },
          ]}
          second={{ words: words.leavePoints, onPress: onLeave }}
          main={{
            words: words.measureWithPoints,
            sign: 'fourPoints',
            onPress: finish,
            ...(notYet === undefined ? {} : { notYet }),
          }}
        />
      }
    >
      <div
        ref={box}
        className="four-points"
        onPointerDown={(event) => {
          const point = fromEvent(event);
          const index = nearest(point);
          if (index < 0 || event.button !== 0 || image.width === 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          setHeld(index);
          put(index, point);
        }}
        onPointerMove={(event) => held !== null && put(held, fromEvent(event))}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        {image.address !== null && (
          <img
            src={image.address}
            alt={words.photographToMark}
            draggable={false}
            style={{ left, top, width: image.width * scale, height: image.height * scale }}
          />
        )}
        {/* Before the picture is there, a mark would have no place on it. */}
        {image.width > 0 &&
          cornerNames.map((corner, index) => {
            const point = points[index] ?? null;
            const shown = point ?? {
              x: image.width * (index === 0 || index === 3 ? 0.15 : 0.85),
              y: image.height * (index < 2 ? 0.85 : 0.15),
            };
            return (
              <button
                key={corner}
                type="button"
                className={point === null ? 'corner-mark on-photograph is-waiting' : 'corner-mark on-photograph'}
                style={{ left: left + shown.x * scale, top: top + shown.y * scale }}
                aria-label={words.cornerLabel(words.corners[corner], point !== null)}
                data-own-keys
                onFocus={() => setHeld(null)}
                onKeyDown={(event) => {
                  nudge(event, index);
                  if ((event.key === 'Enter' || event.key === ' ') && point === null) {
                    event.preventDefault();
                    put(index, shown);
                    useShell.getState().say(words.cornerLabel(words.corners[corner], true));
                  }
                }}
              >
                <span className="corner-name">{words.corners[corner]}</span>
              </button>
            );
          })}
        <MagnifierGlass
          address={image.address}
          points={points}
          held={held}
          scale={scale}
          left={left}
          top={top}
          box={box}
        />
      </div>
      <section className="check-words" aria-label={words.wordsLabel}>
        <Sentence size="large">{sentence}</Sentence>
        <p>{words.pointsLead}</p>
        <p className="second">{words.pointsGive}</p>
      </section>
    </ScreenFrame>
  );
}
