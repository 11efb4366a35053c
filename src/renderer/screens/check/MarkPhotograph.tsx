import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import './markPhotograph.css';
import type { Marks } from '../../../core/model/marks.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import { markingCommands } from './checkCommands.ts';
import type { Look } from './checkStore.ts';
import { fitOf } from './fourPoints.ts';
import { MagnifierGlass } from './MagnifierGlass.tsx';
import { MarkedLines } from './MarkedLines.tsx';
import { MarkingWords } from './MarkingWords.tsx';
import {
  cardOf,
  lackingIn,
  type Marking,
  markingOf,
  marksOf,
  nextPlace,
  type Place,
  placesOf,
  pointAt,
  takenBack,
  waitingPlace,
  withCardOrWithout,
  withLength,
  withNewLength,
  without,
  withPoint,
} from './marking.ts';
import { placeName, sentenceOf } from './markingSentence.ts';
import type { PlainPoint } from './plainPoint.ts';
import { useHostImage } from './useHostImage.ts';

interface MarkPhotographProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly start: Marks | null;
  readonly onMeasure: (marks: Marks) => void;
  readonly onLeave: () => void;
}

/** The inner corners of the frame, a length, a card, marked by hand: by finger, by mouse, or by Tab and arrow keys. */
export function MarkPhotograph({ look, piece, start, onMeasure, onLeave }: MarkPhotographProps) {
  const all = useWords();
  const words = all.check;
  const key = usePiece((state) => state.key);
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: look.hash, size: 'full' } },
  );
  const [marking, setMarking] = useState<Marking>(() => markingOf(start));
  const [held, setHeld] = useState<Place | null>(null);
  const [focused, setFocused] = useState<Place | null>(null);
  const glass = held ?? focused;
  const places = placesOf(marking);
  const next = nextPlace(marking);
  const scale = image.width === 0 ? 1 : Math.min(width / image.width, height / image.height);
  const left = (width - image.width * scale) / 2;
  const top = (height - image.height * scale) / 2;
  const corners = marking[0]!.points.flatMap((point) => point ?? []);
  const fit = corners.length === 4 ? fitOf(corners, piece.loom.openingWidth, piece.loom.openingHeight) : null;
  const put = (place: Place, point: PlainPoint) => {
    const inside = {
      x: Math.min(Math.max(point.x, 0), image.width),
      y: Math.min(Math.max(point.y, 0), image.height),
    };
    setMarking((before) => withPoint(before, place, inside));
  };
  const fromEvent = (event: PointerEvent): PlainPoint => {
    const place = box.current?.getBoundingClientRect();
    return {
      x: (event.clientX - (place?.left ?? 0) - left) / scale,
      y: (event.clientY - (place?.top ?? 0) - top) / scale,
    };
  };
  const nearest = (point: PlainPoint): Place | null => {
    const near = places.find((place) => {
      const each = pointAt(marking, place);
      return each !== null && Math.hypot(each.x - point.x, each.y - point.y) * scale < 24;
    });
    return near ?? nextPlace(marking);
  };
  /** Where a mark stands, or waits to be set: a corner near where that corner of the picture is. */
  const placeOf = (place: Place): PlainPoint =>
    pointAt(marking, place) ?? waitingPlace(marking, place, image.width, image.height);
  const nudge = (event: KeyboardEvent, place: Place) => {
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
    const from = placeOf(place);
    put(place, { x: from.x + move[0], y: from.y + move[1] });
  };
  const lacking = lackingIn(marking);
  const sentence = sentenceOf(marking, fit, words);
  // The sentence at the head says it whole.
  const astray = fit?.kind === 'crossed' || fit?.kind === 'mirrored' ? words.astray[fit.kind] : undefined;
  const notYet = lacking !== null ? words.lacking(lacking) : astray;
  const finish = () => {
    if (notYet === undefined) onMeasure(marksOf(marking));
  };
  const takeBack = () => setMarking(takenBack);
  const ask = (more: (before: Marking) => Marking) => {
    const after = more(marking);
    // At once, so that whoever marks by keys goes on from the new mark.
    flushSync(() => setMarking(after));
    if (after.length > marking.length)
      box.current?.querySelector<HTMLElement>(`[data-thing="${after.length - 1}"]`)?.focus();
  };
  const askLength = () => ask(withNewLength);
  const askCard = () => ask(withCardOrWithout);
  const marked = { length: marking.some(({ kind }) => kind === 'length'), card: cardOf(marking) >= 0 };
  useCommands(
    'four-points',
    withRuns(markingCommands(all, marked), {
      'leave-points': onLeave,
      'take-back-point': takeBack,
      'mark-length': askLength,
      'mark-card': askCard,
    }),
  );
  return (
    <ScreenFrame
      className="check-screen"
      footer={
        <Footer
          hints={[
            { keys: ['Tab'], words: words.keyNextMark },
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
          const place = nearest(point);
          if (place === null || event.button !== 0 || image.width === 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          setHeld(place);
          put(place, point);
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
        <MarkedLines marking={marking} scale={scale} left={left} top={top} />
        {/* Before the picture is there, a mark would have no place on it. */}
        {image.width > 0 &&
          places.map((place) => {
            const marked = pointAt(marking, place) !== null;
            const at = placeOf(place);
            const name = placeName(marking, place, words);
            const asked = next !== null && place.thing === next.thing && place.point === next.point;
            const state = marked ? '' : asked ? ' is-asked' : ' is-waiting';
            return (
              <button
                key={`${place.thing} ${place.point}`}
                type="button"
                className={`corner-mark on-photograph${state}`}
                style={{ left: left + at.x * scale, top: top + at.y * scale }}
                aria-label={words.placeLabel(name.label, marked)}
                data-own-keys
                data-thing={place.thing}
                onFocus={() => {
                  setHeld(null);
                  setFocused(place);
                }}
                onBlur={() => setFocused(null)}
                onKeyDown={(event) => {
                  nudge(event, place);
                  if ((event.key === 'Enter' || event.key === ' ') && !marked) {
                    event.preventDefault();
                    put(place, at);
                    useShell.getState().say(words.placeLabel(name.label, true));
                  }
                }}
              >
                <span className="corner-name">{name.short}</span>
              </button>
            );
          })}
        <MagnifierGlass
          address={image.address}
          point={glass === null ? null : pointAt(marking, glass)}
          scale={scale}
          left={left}
          top={top}
          width={width}
        />
      </div>
      <MarkingWords
        marking={marking}
        sentence={sentence}
        units={piece.units}
        onAskLength={askLength}
        onAskCard={askCard}
        onLength={(thing, length) => setMarking((before) => withLength(before, thing, length))}
        onTakeAway={(thing) => setMarking((before) => without(before, thing))}
      />
    </ScreenFrame>
  );
}
