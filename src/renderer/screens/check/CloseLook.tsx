import { useCallback, useMemo, useRef } from 'react';
import './closeLook.css';
import type { Flag } from '../../../core/model/check.ts';
import { measurement } from '../../../core/model/measurement.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { sizeFigure } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';
import type { Look } from './checkStore.ts';
import { flagPlace, isAcross, selvedgeAt } from './flagFigure.ts';
import { usualLayers } from './layers.ts';
import { MeasurementMark } from './marks.tsx';
import type { Project } from './overlayPaths.ts';
import { PhotographOverlay } from './PhotographOverlay.tsx';
import { toScreenX, toScreenY } from './stageView.ts';
import { useFrontOnPicture } from './useFrontOnPictures.ts';

interface CloseLookProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly edges: PlannedSelvedges;
  readonly flag: Flag;
}

/** Pixels per mm of the close look: enough to see a pass by itself. */
const CLOSE_SCALE = 10;
/** A string that bows, or isn't there, shows over a longer stretch, beside its neighbours. */
const STRING_SCALE = 4;

/** The place a flag speaks of, near enough to see it with one's own eyes. */
export function CloseLook({ look, piece, edges, flag }: CloseLookProps) {
  const words = useWords().check;
  const size = useSettings((state) => state.settings.textSize) / 100;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const place = flagPlace(flag, look.reading, edges);
  const x = place?.x ?? 0;
  const y = place?.y ?? 0;
  const across = isAcross(flag);
  const view = useMemo(() => {
    const reach = Math.max(1, Math.abs(flag.deviationMm));
    // A large deviation must fit beside its figure, so the look draws back for it.
    const closest = flag.ends.length > 0 ? STRING_SCALE : CLOSE_SCALE;
    const scale = Math.min(closest, width === 0 ? closest : (width * 0.3) / reach);
    const side = flag.side === 'left' ? -1 : 1;
    const middleX = across && flag.side !== null ? x + side * ((width * 0.06) / scale) : x;
    return { scale, middleX, middleY: y, width, height };
  }, [width, height, x, y, flag, across]);
  const rectangle = useMemo(
    () =>
      width === 0
        ? null
        : {
            left: view.middleX - width / 2 / view.scale,
            right: view.middleX + width / 2 / view.scale,
            bottom: view.middleY - height / 2 / view.scale,
            top: view.middleY + height / 2 / view.scale,
            pxPerMm: Math.min(20, view.scale * Math.min(2, window.devicePixelRatio)),
          },
    [view, width, height],
  );
  const picture = useFrontOnPicture(look, rectangle);
  const project: Project = useCallback((px, py) => ({ x: toScreenX(view, px), y: toScreenY(view, py) }), [view]);
  const measured = flag.side === null || !across ? null : selvedgeAt(look.reading, flag.side, y);
  const planned = flag.side === null ? 0 : edges[flag.side];
  const labelAtRight = flag.side !== 'left';
  return (
    <div ref={box} className="close-look" role="img" aria-label={words.closeLookLabel}>
      {width > 0 && (
        <svg width={width} height={height} aria-hidden="true">
          {picture !== null && (
            <image
              href={picture.address}
              x={toScreenX(view, picture.left)}
              y={toScreenY(view, picture.top)}
              width={(picture.right - picture.left) * view.scale}
              height={(picture.top - picture.bottom) * view.scale}
              preserveAspectRatio="none"
            />
          )}
          <PhotographOverlay
            piece={piece}
            reading={look.reading}
            edges={edges}
            layers={usualLayers}
            marked={flag.ends}
            project={project}
            size={size}
            name="close-look"
          />
          {measured !== null && (
            <MeasurementMark
              x1={toScreenX(view, measured.x)}
              x2={toScreenX(view, planned)}
              y1={toScreenY(view, measured.y)}
              y2={toScreenY(view, measured.y)}
              size={size}
            />
          )}
        </svg>
      )}
      {measured !== null && (
        <span className={labelAtRight ? 'close-look-figure is-right' : 'close-look-figure'}>
          {sizeFigure(measurement(flag.deviationMm, flag.sigmaMm, 1, 'flag'), piece.units)}
        </span>
      )}
      {look.rendered && <span className="close-look-label">{words.renderedShort}</span>}
    </div>
  );
}
