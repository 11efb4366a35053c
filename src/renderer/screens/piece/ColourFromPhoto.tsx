import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useWords } from '../../words/useWords.ts';

/** Half the side of the patch whose middle colour is taken, in px: enough to even out the twist of a yarn. */
const PATCH = 7;
const WIDEST = 900;
/** How far an arrow key moves the place, px. */
const STEP = 6;

interface ColourFromPhotoProps {
  readonly photo: File;
  readonly onPick: (colour: string) => void;
}

/** A photograph of the yarn to press on, or to move over with the arrow keys: the median colour there is the yarn's. */
export function ColourFromPhoto({ photo, onPick }: ColourFromPhotoProps) {
  const words = useWords().piece;
  const canvas = useRef<HTMLCanvasElement>(null);
  const [place, setPlace] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const [unreadable, setUnreadable] = useState(false);
  useEffect(() => {
    let gone = false;
    const show = async () => {
      const image = await createImageBitmap(photo, { imageOrientation: 'from-image' });
      const target = canvas.current;
      if (gone || !target) return;
      const scale = Math.min(1, WIDEST / image.width);
      target.width = Math.round(image.width * scale);
      target.height = Math.round(image.height * scale);
      target.getContext('2d', { willReadFrequently: true })?.drawImage(image, 0, 0, target.width, target.height);
      image.close();
      setPlace({ x: target.width / 2, y: target.height / 2 });
      target.focus();
    };
    show().catch(() => setUnreadable(true));
    return () => {
      gone = true;
    };
  }, [photo]);
  const pick = (x: number, y: number) => {
    const target = canvas.current;
    const context = target?.getContext('2d', { willReadFrequently: true });
    if (!target || !context) return;
    const at = { x: Math.max(0, Math.min(target.width - 1, x)), y: Math.max(0, Math.min(target.height - 1, y)) };
    setPlace(at);
    const [left, top] = [Math.max(0, Math.round(at.x) - PATCH), Math.max(0, Math.round(at.y) - PATCH)];
    const { data } = context.getImageData(left, top, 2 * PATCH + 1, 2 * PATCH + 1);
    const channel = (which: number) => {
      const values = [];
      // Past the picture's edge there is nothing, and nothing has no colour.
      for (let index = 0; index < data.length; index += 4) if (data[index + 3]! > 0) values.push(data[index + which]!);
      values.sort((a, b) => a - b);
      return (values[Math.floor(values.length / 2)] ?? 0).toString(16).padStart(2, '0');
    };
    onPick(`#${channel(0)}${channel(1)}${channel(2)}`);
  };
  const move = (event: KeyboardEvent) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way === undefined || place === null) return;
    event.preventDefault();
    pick(place.x + way[0]! * STEP, place.y + way[1]! * STEP);
  };
  if (unreadable) return <p role="alert">{words.photoUnreadable}</p>;
  return (
    <div className="colour-photo">
      <p className="second">{words.pickHere}</p>
      <div className="colour-place">
        <canvas
          ref={canvas}
          className="colour-canvas"
          role="img"
          aria-label={words.pickHere}
          tabIndex={0}
          onKeyDown={move}
          onPointerDown={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            const share = event.currentTarget.width / box.width;
            pick((event.clientX - box.left) * share, (event.clientY - box.top) * share);
          }}
        />
        {place !== null && canvas.current !== null && (
          <span
            className="colour-ring"
            style={{
              left: `${(place.x / canvas.current.width) * 100}%`,
              top: `${(place.y / canvas.current.height) * 100}%`,
            }}
          />
        )}
      </div>
    </div>
  );
}
