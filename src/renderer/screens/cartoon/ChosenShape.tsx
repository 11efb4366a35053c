import { type PointerEvent, useMemo } from 'react';
import { outlinesOf } from '../../../core/cartoon/outline.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import { verticesOf } from '../../../core/cartoon/vertices.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import type { Chart } from '../../../core/model/plan.ts';
import { useWords } from '../../words/useWords.ts';
import type { Frame } from './frame.ts';
import { standingRuns, steppedEdge } from './steppedEdge.ts';

interface ChosenShapeProps {
  readonly piece: Piece;
  readonly chart: Chart;
  readonly shape: Shape;
  readonly frame: Frame;
  readonly holdVertex: (shape: string, index: number, event: PointerEvent) => void;
}

const MOST_HANDLES = 80;
/** A side that stands this many turns or more is told in words along it. */
const LONG_RUN = 12;

/** The chosen shape: its drawn line in the plan's dashes, the stepped edge, how long each side stands, its handles. */
export function ChosenShape({ piece, chart, shape, frame, holdVertex }: ChosenShapeProps) {
  const words = useWords().cartoon;
  const area = piece.shapes.indexOf(shape) + 1;
  const stretches = useMemo(() => steppedEdge(chart, area), [chart, area]);
  const runs = useMemo(() => standingRuns(chart, area), [chart, area]);
  const outlines = useMemo(() => outlinesOf(shape, clothBox(piece)), [shape, piece]);
  const half = (chart.ends * chart.pitch) / 2;
  const endX = (line: number) => frame.x(line * chart.pitch - half);
  const passY = (pass: number) => frame.y(pass * chart.passHeight);
  const edge = stretches
    .map(
      ({ x1, y1, x2, y2 }) =>
        `M${endX(x1).toFixed(1)} ${passY(y1).toFixed(1)}L${endX(x2).toFixed(1)} ${passY(y2).toFixed(1)}`,
    )
    .join('');
  const drawn = outlines
    .flatMap((outline) => outline.rings)
    .map((ring) => {
      const points = [];
      for (let at = 0; at < ring.length; at += 2)
        points.push(`${frame.x(ring[at]!).toFixed(1)} ${frame.y(ring[at + 1]!).toFixed(1)}`);
      return `M${points.join('L')}Z`;
    })
    .join('');
  const handles = shape.locked || shape.rotation !== 0 ? [] : verticesOf(shape);
  const numbers = frame.look.pxPerMm >= 3;
  return (
    <g>
      <path d={edge} className="stepped-casing" />
      <path d={edge} className="stepped" />
      <path d={drawn} className="drawn-casing" />
      <path d={drawn} className="drawn" />
      {runs.map((run) => {
        const turns = (run.toPass - run.fromPass) / 2;
        const top = passY(run.toPass);
        const tall = passY(run.fromPass) - top;
        const x = endX(run.line) + (run.side === 'left' ? -13 : 13);
        const y = top + tall / 2;
        const key = `${run.side} ${run.fromPass}`;
        if (turns >= LONG_RUN && tall > 150) {
          return (
            <text key={key} className="run-words" transform={`translate(${x} ${y}) rotate(-90)`}>
              {words.straight(turns)}
            </text>
          );
        }
        if (!numbers || tall < 13 || turns < 1) return null;
        return (
          <text key={key} className="run-count" x={x} y={y}>
            {Math.round(turns * 2) / 2}
          </text>
        );
      })}
      {handles.length <= MOST_HANDLES &&
        handles.map((vertex) => (
          <rect
            key={vertex.index}
            className="handle"
            x={frame.x(vertex.x) - 8}
            y={frame.y(vertex.y) - 8}
            width={16}
            height={16}
            onPointerDown={(event) => holdVertex(shape.id, vertex.index, event)}
          />
        ))}
    </g>
  );
}
