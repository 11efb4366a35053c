import { useEffect, useMemo, useState } from 'react';
import { usePiece } from '../../state/pieceStore.ts';
import type { Look } from './checkStore.ts';
import { type StageView, toClothX, toClothY } from './stageView.ts';
import { useHostImage } from './useHostImage.ts';

export interface FrontOnPicture {
  readonly address: string;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly pxPerMm: number;
}

const round = (value: number) => Math.round(value * 100) / 100;

function visible(view: StageView, room: number): Rectangle {
  const spareX = view.width * room;
  const spareY = view.height * room;
  return {
    left: round(toClothX(view, -spareX)),
    right: round(toClothX(view, view.width + spareX)),
    bottom: round(toClothY(view, view.height + spareY)),
    top: round(toClothY(view, -spareY)),
    pxPerMm: Math.min(16, round(view.scale * Math.min(2, window.devicePixelRatio))),
  };
}

/** One front-on picture of a rectangle of cloth. */
export function useFrontOnPicture(look: Look | null, rectangle: Rectangle | null): FrontOnPicture | null {
  const key = usePiece((state) => state.key);
  const image = useHostImage(
    look === null || key === null || rectangle === null || look.reading.reference === null
      ? null
      : {
          call: 'frontOnImage',
          params: { key, hash: look.hash, draft: look.draft, check: look.kept?.id ?? null, ...rectangle },
        },
  );
  if (image.address === null || image.asked?.call !== 'frontOnImage') return null;
  const { left, right, bottom, top } = image.asked.params;
  return { address: image.address, left, right, bottom, top };
}

/** The whole piece, and over it, once the weaver has zoomed and stopped moving, a finer picture of what is on screen. */
export function useFrontOnPictures(look: Look, view: StageView, base: StageView): readonly FrontOnPicture[] {
  const whole = useMemo(() => (base.width === 0 ? null : visible(base, 0.25)), [base]);
  const [fine, setFine] = useState<Rectangle | null>(null);
  useEffect(() => {
    if (view.scale <= base.scale * 1.2) {
      setFine(null);
      return;
    }
    const timer = setTimeout(() => setFine(visible(view, 0.15)), 250);
    return () => clearTimeout(timer);
  }, [view, base.scale]);
  const wholePicture = useFrontOnPicture(look, whole);
  const finePicture = useFrontOnPicture(look, fine);
  return [wholePicture, finePicture].filter((picture) => picture !== null);
}
