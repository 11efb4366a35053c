import { type KeyboardEvent, useCallback, useMemo, useRef, useState } from 'react';
import './compareSlide.css';
import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { plannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { Sign } from '../../parts/Sign.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';
import { type Look, lookAtKept } from '../check/checkStore.ts';
import { PlanLine } from '../check/marks.tsx';
import { type Project, plannedOutline, plannedShapes } from '../check/overlayPaths.ts';
import { toScreenX, toScreenY, wholePiece } from '../check/stageView.ts';
import { type FrontOnPicture, useFrontOnPicture } from '../check/useFrontOnPictures.ts';

interface CompareSlideProps {
  readonly piece: Piece;
  readonly earlier: CheckRecord | null;
  readonly later: CheckRecord;
  readonly earlierName: string;
  readonly laterName: string;
  /** Share of the breadth showing the earlier photograph. */
  readonly at: number;
  readonly onSlide: (at: number) => void;
}

const lookOf = (record: CheckRecord | null): Look | null => (record === null ? null : lookAtKept(record));

/** Two photographs at the same scale, slid over each other, with the plan over both. */
export function CompareSlide({ piece, earlier, later, earlierName, laterName, at, onSlide }: CompareSlideProps) {
  const words = useWords().record;
  const size = useSettings((state) => state.settings.textSize) / 100;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const [held, setHeld] = useState(false);
  const edges = useMemo(() => plannedSelvedges(piece, later.reading.selvedge), [piece, later]);
  const view = useMemo(
    () => wholePiece(width, height, edges.right, piece.cloth.height),
    [width, height, edges, piece.cloth.height],
  );
  const rectangle = useMemo(
    () =>
      width === 0
        ? null
        : {
            left: view.middleX - width / 2 / view.scale,
            right: view.middleX + width / 2 / view.scale,
            bottom: view.middleY - height / 2 / view.scale,
            top: view.middleY + height / 2 / view.scale,
            pxPerMm: Math.min(12, view.scale * Math.min(2, window.devicePixelRatio)),
          },
    [view, width, height],
  );
  const earlierLook = useMemo(() => lookOf(earlier), [earlier]);
  const laterLook = useMemo(() => lookOf(later), [later]);
  const under = useFrontOnPicture(laterLook, rectangle);
  const over = useFrontOnPicture(earlierLook, rectangle);
  const project: Project = useCallback((x, y) => ({ x: toScreenX(view, x), y: toScreenY(view, y) }), [view]);
  const plan = useMemo(
    () => plannedOutline(edges, piece.cloth.height, project) + plannedShapes(piece, edges, project),
    [edges, piece, project],
  );
  const picture = (each: FrontOnPicture | null) =>
    each !== null && (
      <image
        href={each.address}
        x={toScreenX(view, each.left)}
        y={toScreenY(view, each.top)}
        width={(each.right - each.left) * view.scale}
        height={(each.top - each.bottom) * view.scale}
        preserveAspectRatio="none"
      />
    );
  const line = at * width;
  const slideTo = (clientX: number) => {
    const place = box.current?.getBoundingClientRect();
    if (place !== undefined && width > 0) onSlide(Math.min(1, Math.max(0, (clientX - place.left) / width)));
  };
  const keys = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 0.1 : 0.02;
    const moves: Readonly<Record<string, number>> = {
      ArrowLeft: at - step,
      ArrowRight: at + step,
      Home: 0,
      End: 1,
    };
    const next = moves[event.key];
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    onSlide(Math.min(1, Math.max(0, next)));
  };
  return (
    <div
      ref={box}
      className="compare-slide"
      onPointerDown={(event) => {
        if (earlier === null || event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setHeld(true);
        slideTo(event.clientX);
      }}
      onPointerMove={(event) => held && slideTo(event.clientX)}
      onPointerUp={() => setHeld(false)}
      onPointerCancel={() => setHeld(false)}
    >
      <svg width={width} height={height} role="img" aria-label={words.compareLabel(earlierName, laterName)}>
        <defs>
          <clipPath id="compare-earlier">
            <rect width={line} height={height} />
          </clipPath>
        </defs>
        {picture(under)}
        {earlier !== null && <g clipPath="url(#compare-earlier)">{picture(over)}</g>}
        <PlanLine d={plan} size={size} />
        {earlier !== null && (
          <>
            <path d={`M${line} 0V${height}`} stroke="#101518" strokeWidth="6" />
            <path d={`M${line} 0V${height}`} stroke="#ffffff" strokeWidth="3" />
          </>
        )}
      </svg>
      <div className="compare-names">
        {earlier !== null && (
          <span className="compare-name" style={{ opacity: line < 70 ? 0 : 1 }}>
            {earlierName}
          </span>
        )}
        <span className="compare-name is-later" style={{ opacity: earlier !== null && line > width - 70 ? 0 : 1 }}>
          {laterName}
        </span>
      </div>
      {(earlier?.photo.rendered === true || later.photo.rendered) && (
        <span className="compare-name is-rendered">{words.rendered}</span>
      )}
      {earlier !== null && (
        <div
          className="compare-handle on-photograph"
          role="slider"
          tabIndex={0}
          aria-label={words.slideLabel}
          aria-valuemin={0}
          aria-valuemax={100}
          aria-valuenow={Math.round(at * 100)}
          aria-valuetext={words.slideValue(Math.round(at * 100), earlierName, laterName)}
          style={{ left: Math.min(Math.max(line, 34), Math.max(34, width - 34)) }}
          onKeyDown={keys}
        >
          <Sign name="left" size={24} />
          <Sign name="right" size={24} />
        </div>
      )}
    </div>
  );
}
