import { memo, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { freshContext } from '../../canvas/paintCloth.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useChartedStore, useCharting } from '../../state/planning/charted.ts';
import { useShownTheme } from '../../theme/useShownTheme.ts';
import { useWords } from '../../words/useWords.ts';
import { CartoonRulers } from './CartoonRulers.tsx';
import { ChosenShape } from './ChosenShape.tsx';
import { useCartoon } from './cartoonStore.ts';
import { Draft } from './Draft.tsx';
import { frameFor, RULER, wholeLook } from './frame.ts';
import { MirrorLineDrawn } from './MirrorLineDrawn.tsx';
import { OrnamentsDrawn } from './OrnamentsDrawn.tsx';
import { paintChart } from './paintChart.ts';
import { useCartoonPointer } from './useCartoonPointer.ts';

const Rulers = memo(
  CartoonRulers,
  (one, other) =>
    one.piece.cloth === other.piece.cloth &&
    one.piece.warp === other.piece.warp &&
    one.piece.loom === other.piece.loom &&
    one.piece.units === other.piece.units &&
    one.frame.look === other.frame.look &&
    one.frame.width === other.frame.width &&
    one.frame.height === other.frame.height,
);

/** The cloth as it will be woven, under the drawing it is woven from. */
export function CartoonCanvas({ piece, over }: { readonly piece: Piece; readonly over: boolean }) {
  const words = useWords().cartoon;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useBoxSize(box);
  const { look: set, setLook, tool, chosen, draft } = useCartoon();
  const theme = useShownTheme();
  useCharting(piece, chosen);
  const charted = useChartedStore((state) => state.charted);
  const { cloth, warp, loom } = piece;
  const whole = useMemo(
    () => wholeLook({ cloth, warp, loom }, size.width, size.height),
    [cloth, warp, loom, size.width, size.height],
  );
  const look = set ?? whole;
  const frame = useMemo(() => frameFor(look, size.width, size.height), [look, size.width, size.height]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ink of the frame changes with the theme.
  useEffect(() => {
    const context = canvas.current && freshContext(canvas.current, size.width, size.height);
    if (!context || charted === null || size.width === 0) return;
    const ink = getComputedStyle(document.documentElement).getPropertyValue('--ink');
    paintChart(context, charted.picture, charted.grid, frame, ink);
  }, [charted, frame, size.width, size.height, theme]);
  const toCloth = (event: PointerEvent) => {
    const at = box.current!.getBoundingClientRect();
    return {
      x: look.x + (event.clientX - at.left - frame.x(look.x)) / look.pxPerMm,
      y: look.y - (event.clientY - at.top - frame.y(look.y)) / look.pxPerMm,
    };
  };
  const pan = (dx: number, dy: number) => {
    const now = useCartoon.getState().look ?? look;
    setLook({ ...now, x: now.x - dx / now.pxPerMm, y: now.y + dy / now.pxPerMm });
  };
  const pointer = useCartoonPointer(toCloth, pan, look.pxPerMm);
  const zoomed = useRef<(event: WheelEvent) => void>(() => undefined);
  zoomed.current = (event) => {
    event.preventDefault();
    const at = box.current!.getBoundingClientRect();
    const now = useCartoon.getState().look ?? look;
    const pxPerMm = Math.max(0.3, Math.min(60, now.pxPerMm * Math.exp(-event.deltaY * 0.0015)));
    const dx = event.clientX - at.left - frame.x(now.x);
    const dy = event.clientY - at.top - frame.y(now.y);
    setLook({ pxPerMm, x: now.x + dx / now.pxPerMm - dx / pxPerMm, y: now.y - dy / now.pxPerMm + dy / pxPerMm });
  };
  useEffect(() => {
    const target = box.current;
    if (!target) return;
    const turn = (event: WheelEvent) => zoomed.current(event);
    target.addEventListener('wheel', turn, { passive: false });
    return () => target.removeEventListener('wheel', turn);
  }, []);
  const shape = piece.shapes.find((each) => each.id === chosen);
  const clip = {
    x: RULER.left,
    y: RULER.top,
    width: Math.max(0, size.width - RULER.left - RULER.right),
    height: Math.max(0, size.height - RULER.top - RULER.bottom),
  };
  return (
    <div className={`cartoon-canvas is-${tool}${over ? ' is-over' : ''}`} ref={box}>
      <canvas ref={canvas} />
      {size.width > 0 && (
        <svg
          width={size.width}
          height={size.height}
          role="img"
          aria-label={words.drawing}
          onPointerDown={pointer.down}
          onPointerMove={pointer.move}
          onPointerUp={pointer.up}
          onPointerCancel={pointer.up}
          onDoubleClick={pointer.finishPolygon}
          onContextMenu={(event) => event.preventDefault()}
        >
          <title>{words.drawing}</title>
          <clipPath id="cartoon-window">
            <rect {...clip} />
          </clipPath>
          <g clipPath="url(#cartoon-window)">
            <OrnamentsDrawn piece={piece} frame={frame} hold={pointer.holdOrnament} />
            {shape && (
              <ChosenShape
                piece={piece}
                shape={shape}
                charted={charted}
                frame={frame}
                holdHandle={pointer.holdHandle}
              />
            )}
            {shape && <MirrorLineDrawn piece={piece} shape={shape} frame={frame} />}
            <Draft tool={tool} points={draft} frame={frame} piece={piece} />
          </g>
          <Rulers piece={piece} frame={frame} />
        </svg>
      )}
    </div>
  );
}
