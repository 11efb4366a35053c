import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { clothOnPhoto } from '../../../core/report/clothOnPhoto.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';
import type { Look } from './checkStore.ts';
import type { Layers } from './layers.ts';
import type { Project } from './overlayPaths.ts';
import { PhotographOverlay } from './PhotographOverlay.tsx';
import { type StageView, toScreenX, toScreenY } from './stageView.ts';
import { useHostImage } from './useHostImage.ts';
import { usePanZoom } from './usePanZoom.ts';

interface AsTakenProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly edges: PlannedSelvedges;
  readonly layers: Layers;
  readonly marked: readonly number[];
}

/** The photograph as it was taken, plan and cloth bent by its lens and its angle to lie where they belong. */
export function AsTaken({ look, piece, edges, layers, marked }: AsTakenProps) {
  const words = useWords().check;
  const key = usePiece((state) => state.key);
  const size = useSettings((state) => state.settings.textSize) / 100;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: look.hash, size: 'full' } },
  );
  const reference = look.reading.reference;
  const photoWidth = reference?.photoWidth ?? image.width;
  const photoHeight = reference?.photoHeight ?? image.height;
  // The same view as front-on, in photograph pixels: up is the other way round, so heights are counted downwards.
  const base = useMemo((): StageView => {
    const scale = photoWidth === 0 ? 1 : Math.min(width / photoWidth, height / photoHeight);
    return { scale: scale || 1, middleX: photoWidth / 2, middleY: -photoHeight / 2, width, height };
  }, [photoWidth, photoHeight, width, height]);
  const [view, setView] = useState(base);
  useEffect(() => setView(base), [base]);
  const limits = useMemo(() => ({ min: base.scale * 0.6, max: 6 }), [base.scale]);
  const panZoom = usePanZoom(box, { view, setView, limits });
  const frame = useMemo(() => (reference === null ? null : clothOnPhoto(piece, reference)), [piece, reference]);
  const project: Project = useCallback(
    (x, y) => {
      const at = frame?.(x, y) ?? { x: 0, y: 0 };
      return { x: toScreenX(view, at.x), y: toScreenY(view, -at.y) };
    },
    [frame, view],
  );
  return (
    <div ref={box} className="photograph" {...panZoom}>
      <svg width="100%" height="100%" role="img" aria-label={words.asTakenLabel}>
        {image.address !== null && (
          <image
            href={image.address}
            x={toScreenX(view, 0)}
            y={toScreenY(view, 0)}
            width={photoWidth * view.scale}
            height={photoHeight * view.scale}
            preserveAspectRatio="none"
          />
        )}
        {frame !== null && (
          <PhotographOverlay
            piece={piece}
            reading={look.reading}
            edges={edges}
            layers={layers}
            marked={marked}
            project={project}
            size={size}
            name="as-taken"
          />
        )}
      </svg>
    </div>
  );
}
