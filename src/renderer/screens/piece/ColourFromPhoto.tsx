import { useRef, useState } from 'react';
import { SecondButton } from '../../parts/Actions.tsx';
import { chooseFile, photographTypes } from '../../parts/useFileDrop.ts';
import { useWords } from '../../words/useWords.ts';

/** Half the side of the patch whose middle colour is taken, in px: enough to even out the twist of a yarn. */
const PATCH = 7;

/** A photograph of the yarn to press on: the median colour round the press becomes the yarn's. */
export function ColourFromPhoto({ onPick }: { readonly onPick: (colour: string) => void }) {
  const words = useWords().piece;
  const canvas = useRef<HTMLCanvasElement>(null);
  const [shown, setShown] = useState(false);
  const show = async (file: File) => {
    const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const target = canvas.current;
    if (!target) return;
    const scale = Math.min(1, 900 / image.width);
    target.width = Math.round(image.width * scale);
    target.height = Math.round(image.height * scale);
    target.getContext('2d', { willReadFrequently: true })?.drawImage(image, 0, 0, target.width, target.height);
    image.close();
    setShown(true);
  };
  const pick = (x: number, y: number) => {
    const context = canvas.current?.getContext('2d', { willReadFrequently: true });
    if (!context) return;
    const { data } = context.getImageData(Math.max(0, x - PATCH), Math.max(0, y - PATCH), 2 * PATCH + 1, 2 * PATCH + 1);
    const channel = (which: number) => {
      const values = [];
      for (let at = which; at < data.length; at += 4) values.push(data[at]!);
      values.sort((a, b) => a - b);
      return values[Math.floor(values.length / 2)]!.toString(16).padStart(2, '0');
    };
    onPick(`#${channel(0)}${channel(1)}${channel(2)}`);
  };
  return (
    <div className="colour-photo">
      <SecondButton
        action={{
          words: words.fromPhoto,
          sign: 'photograph',
          onPress: () => chooseFile(photographTypes, (file) => void show(file)),
        }}
      />
      {shown && <p className="second">{words.pickHere}</p>}
      <canvas
        ref={canvas}
        className={shown ? 'colour-canvas' : 'out-of-sight'}
        onPointerDown={(event) => {
          const box = event.currentTarget.getBoundingClientRect();
          const share = event.currentTarget.width / box.width;
          pick(Math.round((event.clientX - box.left) * share), Math.round((event.clientY - box.top) * share));
        }}
      />
    </div>
  );
}
