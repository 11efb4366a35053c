import { type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { makeChart } from '../../../core/chart/makeChart.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { BARE, type Chart } from '../../../core/model/plan.ts';
import { freshContext } from '../../canvas/paintCloth.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useWords } from '../../words/useWords.ts';
import { CartoonRulers } from './CartoonRulers.tsx';
import { ChosenShape } from './ChosenShape.tsx';
import { useCartoon } from './cartoonStore.ts';
import { Draft } from './Draft.tsx';
import { type Frame, frameFor, RULER, wholeLook } from './frame.ts';
import { useCartoonPointer } from './useCartoonPointer.ts';

/** The cloth as it will be woven, under the drawing it is woven from. */
export function CartoonCanvas({ piece }: { readonly piece: Piece }) {
  const words = useWords().cartoon;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useBoxSize(box);
  const { look: set, setLook, tool, chosen, draft } = useCartoon();
  const chart = useMemo(() => makeChart(piece).chart, [piece]);
  const look = set ?? wholeLook(piece, size.width, size.height);
  const frame = frameFor(look, size.width, size.height);
  useEffect(() => {
    const context = canvas.current && freshContext(canvas.current, size.width, size.height);
    if (context && size.width > 0) paintChart(context, piece, chart, frame);
  });
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
  useEffect(() => {
    const target = box.current;
    if (!target) return;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const factor = Math.exp(-event.deltaY * 0.0015);
      const at = target.getBoundingClientRect();
      const now = useCartoon.getState().look ?? look;
      const pxPerMm = Math.max(0.3, Math.min(60, now.pxPerMm * factor));
      const dx = event.clientX - at.left - frame.x(now.x);
      const dy = event.clientY - at.top - frame.y(now.y);
      setLook({ pxPerMm, x: now.x + dx / now.pxPerMm - dx / pxPerMm, y: now.y - dy / now.pxPerMm + dy / pxPerMm });
    };
    target.addEventListener('wheel', turn, { passive: false });
    return () => target.removeEventListener('wheel', turn);
  });
  const shape = piece.shapes.find((each) => each.id === chosen);
  const clip = {
    x: RULER.left,
    y: RULER.top,
    width: Math.max(0, size.width - RULER.left - RULER.right),
    height: Math.max(0, size.height - RULER.top - RULER.bottom),
  };
  return (
    <div className={`cartoon-canvas is-${tool}`} ref={box}>
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
            {shape && (
              <ChosenShape piece={piece} chart={chart} shape={shape} frame={frame} holdVertex={pointer.holdVertex} />
            )}
            <Draft tool={tool} points={draft} frame={frame} piece={piece} />
          </g>
          <CartoonRulers piece={piece} frame={frame} />
        </svg>
      )}
    </div>
  );
}

function paintChart(context: CanvasRenderingContext2D, piece: Piece, chart: Chart, frame: Frame): void {
  const { ends, passes, pitch, passHeight } = chart;
  const half = (ends * pitch) / 2;
  context.save();
  context.beginPath();
  context.rect(RULER.left, RULER.top, frame.width - RULER.left - RULER.right, frame.height - RULER.top - RULER.bottom);
  context.clip();
  const cells = new OffscreenCanvas(ends, passes);
  const small = cells.getContext('2d');
  if (!small) return;
  const image = small.createImageData(ends, passes);
  const pixels = new Uint32Array(image.data.buffer);
  const colours = piece.yarns.map((yarn) => {
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(yarn.colour.slice(at, at + 2), 16));
    return ((255 << 24) | (b! << 16) | (g! << 8) | r!) >>> 0;
  });
  for (let pass = 0; pass < passes; pass++) {
    const row = (passes - 1 - pass) * ends;
    for (let end = 0; end < ends; end++) {
      const yarn = chart.cells[pass * ends + end]!;
      if (yarn !== BARE) pixels[row + end] = colours[yarn] ?? 0;
    }
  }
  small.putImageData(image, 0, 0);
  context.imageSmoothingEnabled = false;
  const left = frame.x(-half);
  const top = frame.y(passes * passHeight);
  const width = frame.x(half) - left;
  const height = frame.y(0) - top;
  context.drawImage(cells, left, top, width, height);
  context.fillStyle = 'rgba(16, 21, 24, 0.28)';
  if (pitch * frame.look.pxPerMm >= 5) {
    for (let end = 0; end <= ends; end++) context.fillRect(frame.x(end * pitch - half) - 0.5, top, 1, height);
  }
  if (frame.look.pxPerMm >= 3) {
    context.fillStyle = 'rgba(16, 21, 24, 0.18)';
    for (let pass = 0; pass <= passes; pass += 2) context.fillRect(left, frame.y(pass * passHeight) - 0.5, width, 1);
  }
  context.strokeStyle = getComputedStyle(document.documentElement).getPropertyValue('--ink');
  context.lineWidth = 2;
  context.strokeRect(left, top, width, height);
  context.restore();
}
