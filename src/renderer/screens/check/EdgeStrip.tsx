import './edgeStrip.css';
import { useRef } from 'react';
import type { EdgeForecast } from '../../../core/compare/forecast.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { MM_PER_INCH } from '../../../core/model/units.ts';
import { Bob } from '../../parts/Bob.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { inchesSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';
import { type EdgePoint, stripFactor } from './edgeRows.ts';
import { type StageView, toScreenY } from './stageView.ts';

interface EdgeStripProps {
  readonly side: 'left' | 'right';
  readonly runs: readonly EdgePoint[][];
  readonly forecast: EdgeForecast | null;
  readonly view: StageView;
  readonly base: StageView;
  readonly planHeight: number;
  readonly allowance: number;
  readonly units: LengthUnits;
  readonly markY: number | null;
}

/** About the breadth of a letter under a strip, px. */
const FIGURE_PX = 7.5;
/** In narrower strips the word for out is left away, as the style sheet says. */
const ROOM_FOR_OUT = 100;

/** One selvedge against its plumb line, sharing the photograph's height scale and drawn four times wider. */
export function EdgeStrip({ side, runs, forecast, view, base, planHeight, allowance, units, markY }: EdgeStripProps) {
  const words = useWords().check;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const factor = stripFactor(runs, base.scale, width);
  const perMm = base.scale * factor;
  const inward = side === 'left' ? 1 : -1;
  const zero = side === 'left' ? width * 0.32 : width * 0.68;
  const x = (out: number) => zero - out * inward * perMm;
  const y = (up: number) => toScreenY(view, up);
  const line = (points: readonly EdgePoint[], shift: number) =>
    points.map((point) => `${x(point.out + shift * point.sigma).toFixed(1)} ${y(point.y).toFixed(1)}`);
  const last = runs.at(-1)?.at(-1);
  // A tick is a millimetre or a sixteenth of an inch; a figure stands at every 3 mm or every eighth, where there is room.
  const part = units === 'mm' ? 1 : MM_PER_INCH / 16;
  const steps = (units === 'mm' ? 3 : 2) * (perMm >= 5 ? 1 : perMm >= 2.5 ? 2 : 4);
  const reachIn = Math.floor((width * 0.68) / (perMm * part));
  const reachOut = Math.floor((width * 0.32) / (perMm * part));
  const ticks = Array.from({ length: reachIn + reachOut + 1 }, (_, index) => index - reachIn);
  // A long word for out leaves no room for the zero, which the bob marks anyway.
  const outTakesZero = width >= ROOM_FOR_OUT && words.out.length * FIGURE_PX + 2 * FIGURE_PX > width * 0.32;
  return (
    <div className={`edge-strip is-${side}`}>
      <h2>
        <span className="is-long">{words.edges[side]}</span>
        <span className="is-short">{words.edgesShort[side]}</span> ×{factor}
      </h2>
      <div ref={box} className="edge-strip-box">
        <svg width={width} height={height} role="img" aria-label={words.stripLabel(words.edges[side])}>
          <rect
            x={Math.min(x(allowance), x(-allowance))}
            width={2 * allowance * perMm}
            y={y(planHeight)}
            height={Math.max(0, y(0) - y(planHeight))}
            fill="var(--allowance)"
          />
          {forecast !== null && last !== undefined && (
            <>
              <path
                fill="var(--cloth-fill)"
                opacity="0.45"
                d={`M${x(last.out)} ${y(last.y)}L${x(forecast.to)} ${y(planHeight)}L${x(forecast.from)} ${y(planHeight)}Z`}
              />
              <path
                fill="none"
                stroke="var(--cloth)"
                strokeWidth="3.2"
                strokeLinecap="round"
                strokeDasharray="0.1 6"
                d={`M${x(last.out)} ${y(last.y)}L${x((forecast.from + forecast.to) / 2)} ${y(planHeight)}`}
              />
            </>
          )}
          <path d={`M${zero} 0V${y(0) + 8}`} stroke="var(--plan)" strokeWidth="2.4" strokeDasharray="9 5" />
          <g transform={`translate(${zero} ${y(0) + 5})`} color="var(--plan)">
            <Bob scale={0.75} />
          </g>
          {runs.map((run) => (
            <g key={run[0]?.y}>
              <path
                fill="var(--cloth-fill)"
                d={`M${line(run, 1).join('L')}L${[...line(run, -1)].reverse().join('L')}Z`}
              />
              <path fill="none" stroke="var(--cloth)" strokeWidth="3" d={`M${line(run, 0).join('L')}`} />
            </g>
          ))}
          {markY !== null && <path d={`M0 ${y(markY)}H${width}`} stroke="var(--edge)" strokeWidth="1" />}
          {ticks.map((tick) => (
            <path
              key={tick}
              d={`M${x(tick * part)} ${height}v${tick % steps === 0 ? -8 : -4}`}
              stroke="var(--edge)"
              strokeWidth="1"
            />
          ))}
        </svg>
      </div>
      <div className="edge-strip-figures figures" aria-hidden="true">
        {ticks
          .filter(
            (tick) =>
              tick <= (outTakesZero ? -1 : 0) && tick % steps === 0 && x(tick * part) > 6 && x(tick * part) < width - 6,
          )
          .map((tick) => (
            <span key={tick} style={{ left: x(tick * part) }}>
              {units === 'mm' ? -tick : inchesSaid(-tick / 16, 16)}
            </span>
          ))}
        <span className="edge-strip-out" style={side === 'left' ? { left: 0 } : { right: 0 }}>
          {words.out}
        </span>
      </div>
    </div>
  );
}
