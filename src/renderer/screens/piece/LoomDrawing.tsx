import { useEffect, useRef } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import type { Chart } from '../../../core/model/plan.ts';
import { type Mm, mm } from '../../../core/model/units.ts';
import { centredFirstNotch } from '../../../core/warp/centring.ts';
import { endsForWidth } from '../../../core/warp/endWidth.ts';
import { loomFit } from '../../../core/warp/loomFit.ts';
import { cellImage } from '../../canvas/cellImage.ts';
import { DerivedDimension, DimensionField } from '../../parts/DimensionField.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

/** Changes the number of ends, keeping the piece as centred as the notches allow. */
export function withEnds(piece: Piece, ends: number): Piece {
  const count = Math.max(2, Math.min(piece.loom.notches, ends));
  return { ...piece, warp: { ...piece.warp, ends: count, firstNotch: centredFirstNotch(piece.loom, count) } };
}

const ROOM = { left: 96, right: 116, top: 6, bottom: 66 };

/** The loom drawn to scale; sizes are typed on its dimension lines. */
export function LoomDrawing({ piece, chart }: { readonly piece: Piece; readonly chart: Chart }) {
  const words = useWords().piece;
  const change = usePiece((state) => state.change);
  const box = useRef<HTMLDivElement>(null);
  const size = useBoxSize(box);
  const { loom, warp, cloth } = piece;
  const fit = loomFit(piece);
  const side = Math.min(34, loom.bar * 1.15);
  const wide = loom.openingWidth + 2 * side;
  const tall = loom.openingHeight + 2 * loom.bar;
  const scale = Math.max(
    0.2,
    Math.min((size.width - ROOM.left - ROOM.right) / wide, (size.height - ROOM.top - ROOM.bottom) / tall),
  );
  const left = ROOM.left + Math.max(0, (size.width - ROOM.left - ROOM.right - wide * scale) / 2);
  const x = (value: number) => left + (value + wide / 2) * scale;
  const y = (value: number) => ROOM.top + (tall - loom.bar - value) * scale;
  const notchX = (notch: number) => (notch - (loom.notches - 1) / 2) * loom.notchPitch;
  const middle = notchX(warp.firstNotch) + ((warp.ends - 1) * loom.notchPitch) / 2;
  const width = warp.ends * loom.notchPitch;
  const clothLeft = middle - width / 2;
  const top = cloth.baseAboveBottomBar + cloth.height;
  const say = (value: number) => lengthSaid(value, piece.units, 'planned');
  const setWidth = (value: Mm) => change((now) => withEnds(now, endsForWidth(value, now.loom.notchPitch)), 'width');
  const right = x(wide / 2) + 46;
  return (
    <div className="loom-drawing" ref={box}>
      <svg width={size.width} height={size.height} role="img" aria-label={words.drawing}>
        <title>{words.drawing}</title>
        <g className="loom-wood">
          <rect x={x(-wide / 2)} y={y(loom.openingHeight)} width={side * scale} height={loom.openingHeight * scale} />
          <rect
            x={x(wide / 2 - side)}
            y={y(loom.openingHeight)}
            width={side * scale}
            height={loom.openingHeight * scale}
          />
          <rect x={x(-wide / 2) - 2} y={y(tall - loom.bar)} width={wide * scale + 4} height={loom.bar * scale} />
          <rect x={x(-wide / 2) - 2} y={y(0)} width={wide * scale + 4} height={loom.bar * scale} />
        </g>
        <g className="loom-notches">
          {Array.from({ length: loom.notches }, (_, notch) => notchX(notch)).map((at) => (
            <path key={at} d={`M${x(at)} ${y(loom.openingHeight)}v-6M${x(at)} ${y(0)}v6`} />
          ))}
        </g>
        <g className="loom-strings" style={{ stroke: 'var(--wood-line)' }}>
          {Array.from({ length: warp.ends }, (_, end) => notchX(warp.firstNotch + end)).flatMap((at) =>
            (warp.stringsPerEnd === 2 ? [-0.55, 0.55] : [0]).map((offset) => (
              <line
                key={`${at} ${offset}`}
                x1={x(at + offset * warp.stringDiameter)}
                x2={x(at + offset * warp.stringDiameter)}
                y1={y(0)}
                y2={y(loom.openingHeight)}
                strokeWidth={Math.max(0.8, warp.stringDiameter * scale * 0.7)}
              />
            )),
          )}
        </g>
        <foreignObject x={x(clothLeft)} y={y(top)} width={width * scale} height={cloth.height * scale}>
          <ChartImage piece={piece} chart={chart} />
        </foreignObject>
        <rect className="cloth-edge" x={x(clothLeft)} y={y(top)} width={width * scale} height={cloth.height * scale} />
        <g className="plumb">
          <line x1={x(middle)} x2={x(middle)} y1={y(loom.openingHeight)} y2={y(cloth.baseAboveBottomBar) + 34} />
          <path d={`M${x(middle) - 6} ${y(cloth.baseAboveBottomBar) + 38}l6 -5l6 5v3l-6 10l-6 -10Z`} />
        </g>
        <g className="dimension-lines">
          <path d={`M${left - 44} ${y(loom.openingHeight)}h-12m6 0V${y(0)}m-6 0h12`} />
          <path
            d={`M${right - 6} ${y(loom.openingHeight)}h12m-6 0V${y(0)}m-6 0h12m-12 ${y(top) - y(0)}h12m-12 ${y(cloth.baseAboveBottomBar) - y(top)}h12`}
          />
          <path
            className="is-guide"
            d={`M${x(clothLeft + width) + 3} ${y(top)}H${right - 8}M${x(clothLeft + width) + 3} ${y(cloth.baseAboveBottomBar)}H${right - 8}`}
          />
          <path d={`M${x(clothLeft)} ${y(-loom.bar) + 18}v12m0 -6H${x(clothLeft + width)}m0 -6v12`} />
        </g>
        <text className="notch-words" x={x(notchX(warp.firstNotch))} y={y(loom.openingHeight) - 12}>
          {words.notch(warp.firstNotch + 1)}
        </text>
        <text className="notch-words" x={x(notchX(warp.firstNotch + warp.ends - 1))} y={y(loom.openingHeight) - 12}>
          {words.notch(warp.firstNotch + warp.ends)}
        </text>
      </svg>
      <span className="on-line" style={{ left: left - 50, top: y(loom.openingHeight / 2) }}>
        <DerivedDimension label={words.openingHeight} words={say(loom.openingHeight)} />
      </span>
      <span className="on-line" style={{ left: right, top: y((loom.openingHeight + top) / 2) }}>
        <DerivedDimension label={words.bareAbove} words={say(Math.max(0, loom.openingHeight - top))} />
      </span>
      <span className="on-line" style={{ left: right, top: y(cloth.baseAboveBottomBar + cloth.height / 2) }}>
        <DimensionField
          label={words.heightOfCloth}
          value={cloth.height}
          units={piece.units}
          step={mm(2 * cloth.passHeight)}
          refuse={(value) => {
            if (value < cloth.passHeight) return words.noPasses;
            const tallest = loom.openingHeight - cloth.baseAboveBottomBar;
            return value > tallest ? words.tooTall(say(value), say(fit.tallest)) : null;
          }}
          onChange={(height) => change((now) => ({ ...now, cloth: { ...now.cloth, height } }), 'height')}
        />
      </span>
      <span className="on-line" style={{ left: right, top: y(cloth.baseAboveBottomBar / 2) }}>
        <DimensionField
          label={words.baseUp}
          value={cloth.baseAboveBottomBar}
          units={piece.units}
          step={mm(5)}
          refuse={(value) => (value + cloth.height > loom.openingHeight ? words.tooHigh : null)}
          onChange={(base) => change((now) => ({ ...now, cloth: { ...now.cloth, baseAboveBottomBar: base } }), 'base')}
        />
      </span>
      <span className="on-line is-low" style={{ left: x(middle), top: y(-loom.bar) + 24 }}>
        <DimensionField
          label={words.widthOfCloth}
          value={mm(width)}
          units={piece.units}
          step={loom.notchPitch}
          refuse={(value) => {
            if (value < 1.5 * loom.notchPitch) return words.tooNarrow(say(2 * loom.notchPitch));
            return endsForWidth(value, loom.notchPitch) > fit.widestEnds
              ? words.tooWide(say(value), say(fit.widest), fit.widestEnds)
              : null;
          }}
          onChange={setWidth}
        />
      </span>
    </div>
  );
}

/** The chart as a small picture: one pixel a cell, stretched. */
function ChartImage({ piece, chart }: { readonly piece: Piece; readonly chart: Chart }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    const colours = piece.yarns.map((yarn) => yarn.colour);
    context?.clearRect(0, 0, chart.ends, chart.passes);
    context?.drawImage(cellImage(chart, colours), 0, 0);
  }, [piece.yarns, chart]);
  return <canvas ref={canvas} width={chart.ends} height={chart.passes} className="chart-image" />;
}
