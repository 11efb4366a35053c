import { type KeyboardEvent, type RefObject, useCallback, useMemo, useState } from 'react';
import './photograph.css';
import type { Piece } from '../../../core/model/piece.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import type { Look } from './checkStore.ts';
import type { Layers } from './layers.ts';
import type { Project } from './overlayPaths.ts';
import { PhotographOverlay } from './PhotographOverlay.tsx';
import { type Probe, probeAt } from './probe.ts';
import { type StageView, toClothX, toClothY, toScreenX, toScreenY, zoomedAt } from './stageView.ts';
import { useFrontOnPictures } from './useFrontOnPictures.ts';
import { usePanZoom } from './usePanZoom.ts';

interface PhotographProps {
  readonly box: RefObject<HTMLDivElement | null>;
  readonly look: Look;
  readonly piece: Piece;
  readonly edges: PlannedSelvedges;
  readonly layers: Layers;
  readonly marked: readonly number[];
  readonly view: StageView;
  readonly base: StageView;
  readonly setView: (view: StageView) => void;
}

/** The loom seen front-on, to scale, with plan and cloth over it; pan, zoom, and read any place in millimetres. */
export function Photograph({ box, look, piece, edges, layers, marked, view, base, setView }: PhotographProps) {
  const words = useWords().check;
  const size = useSettings((state) => state.settings.textSize) / 100;
  const [probe, setProbe] = useState<Probe | null>(null);
  const limits = useMemo(() => ({ min: base.scale * 0.6, max: Math.max(base.scale, 20) }), [base.scale]);
  const panZoom = usePanZoom(box, { view, setView, limits });
  const project: Project = useCallback((x, y) => ({ x: toScreenX(view, x), y: toScreenY(view, y) }), [view]);
  const pictures = useFrontOnPictures(look, view, base);
  const read = (x: number, y: number) => probeAt(x, y, look.reading, edges, piece.units, words);
  const keys = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 10 : 1;
    const from = probe ?? { x: edges.right, y: piece.cloth.height / 4 };
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    };
    const move = moves[event.key];
    const zoom = event.key === '+' || event.key === '=' ? 1.4 : event.key === '-' ? 1 / 1.4 : null;
    if (move !== undefined) {
      const at = { x: from.x + move[0], y: from.y + move[1] };
      // The cross moves by hand; what it reads is the nearest measured place.
      const next = { ...read(at.x, at.y), ...at };
      setProbe(next);
      useShell.getState().say(`${next.title}: ${next.figure}`);
    } else if (zoom !== null) {
      setView(zoomedAt(view, zoom, toScreenX(view, from.x), toScreenY(view, from.y), limits));
    } else if (event.key === '0') setView(base);
    else if (event.key === 'Escape' && probe !== null) setProbe(null);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const probeX = probe === null ? 0 : toScreenX(view, probe.x);
  const probeY = probe === null ? 0 : toScreenY(view, probe.y);
  return (
    <div
      ref={box}
      className="photograph on-photograph"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows read places off the picture, so it takes the focus.
      tabIndex={0}
      aria-label={words.photographLabel}
      data-own-keys
      onKeyDown={keys}
      {...panZoom}
      onPointerMove={(event) => {
        panZoom.onPointerMove(event);
        const place = event.currentTarget.getBoundingClientRect();
        setProbe(read(toClothX(view, event.clientX - place.left), toClothY(view, event.clientY - place.top)));
      }}
      onPointerLeave={() => setProbe(null)}
    >
      <svg width="100%" height="100%" aria-hidden="true">
        {pictures.map((picture) => (
          <image
            key={picture.address}
            href={picture.address}
            x={toScreenX(view, picture.left)}
            y={toScreenY(view, picture.top)}
            width={(picture.right - picture.left) * view.scale}
            height={(picture.top - picture.bottom) * view.scale}
            preserveAspectRatio="none"
          />
        ))}
        <PhotographOverlay
          piece={piece}
          reading={look.reading}
          edges={edges}
          layers={layers}
          marked={marked}
          project={project}
          size={size}
          name="photograph"
        />
        {probe !== null && (
          <g fill="none">
            <path d={`M${probeX - 9} ${probeY}h18M${probeX} ${probeY - 9}v18`} stroke="#fff" strokeWidth="5" />
            <path d={`M${probeX - 9} ${probeY}h18M${probeX} ${probeY - 9}v18`} stroke="#101518" strokeWidth="2" />
          </g>
        )}
      </svg>
      {probe !== null && (
        <p
          className="photograph-probe"
          style={{
            left: Math.min(Math.max(probeX, 4), view.width - 4),
            top: probeY,
            transform: `translate(${probeX > view.width / 2 ? 'calc(-100% - 16px)' : '16px'}, ${probeY > view.height / 2 ? 'calc(-100% - 12px)' : '12px'})`,
          }}
        >
          {probe.title}
          <br />
          <strong>{probe.figure}</strong>
        </p>
      )}
    </div>
  );
}
