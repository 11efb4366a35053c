import { memo, type PointerEvent, useMemo } from 'react';
import { outlinesOf } from '../../../core/cartoon/outline.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import type { Charted } from '../../state/planning/charted.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import type { Frame } from './frame.ts';
import { handlesOf } from './handles.ts';
import { outlinePath } from './outlinePath.ts';

interface ChosenShapeProps {
  readonly piece: Piece;
  readonly shape: Shape;
  readonly charted: Charted | null;
  readonly frame: Frame;
  readonly holdHandle: (shape: string, index: number, event: PointerEvent) => void;
}

/** More would hide what they belong to: then they show once one of them is asked for. */
const MOST_HANDLES = 40;

/** The chosen shape: the stepped edge, its drawn line in the plan's dashes, how long each side stands, its handles. */
export function ChosenShape({ piece, shape, charted, frame, holdHandle }: ChosenShapeProps) {
  const vertex = useCartoon((state) => state.vertex);
  const outlines = useMemo(() => outlinesOf(shape, clothBox(piece)), [shape, piece]);
  const drawn = outlinePath(
    outlines.flatMap((outline) => outline.rings),
    frame,
  );
  const handles = shape.locked ? [] : handlesOf(shape, 0);
  return (
    <g>
      {charted !== null && charted.shape === shape.id && (
        <ChartedEdge charted={charted} look={frame.look} width={frame.width} height={frame.height} frame={frame} />
      )}
      <path d={drawn} className="drawn-casing" />
      <path d={drawn} className="drawn" />
      {(handles.length <= MOST_HANDLES || vertex !== null) &&
        handles.map((handle) => (
          <rect
            key={handle.index}
            className={handle.index === vertex ? 'handle is-chosen' : 'handle'}
            x={frame.x(handle.x) - 8}
            y={frame.y(handle.y) - 8}
            width={16}
            height={16}
            onPointerDown={(event) => holdHandle(shape.id, handle.index, event)}
          />
        ))}
    </g>
  );
}

interface ChartedEdgeProps {
  readonly charted: Charted;
  readonly frame: Frame;
  /** Named so that the edge is drawn anew only when the window looks elsewhere. */
  readonly look: Frame['look'];
  readonly width: number;
  readonly height: number;
}

/** To the half turn: `8 ½`. */
const halves = (turns: number): string => {
  const whole = Math.floor(Math.round(turns * 2) / 2);
  const half = Math.round(turns * 2) % 2 === 1 ? '½' : '';
  return [whole > 0 ? String(whole) : '', half].filter((part) => part !== '').join(' ');
};

/** A side that stands this many turns or more is told in words along it. */
const LONG_RUN = 12;

const ChartedEdge = memo(
  function ChartedEdge({ charted, frame }: ChartedEdgeProps) {
    const words = useWords().cartoon;
    const { grid, edge, runs } = charted;
    const half = (grid.ends * grid.pitch) / 2;
    const endX = (line: number) => frame.x(line * grid.pitch - half);
    const passY = (pass: number) => frame.y(pass * grid.passHeight);
    let path = '';
    for (let at = 0; at < edge.length; at += 4) {
      const from = `${endX(edge[at]!).toFixed(1)} ${passY(edge[at + 1]!).toFixed(1)}`;
      path += `M${from}L${endX(edge[at + 2]!).toFixed(1)} ${passY(edge[at + 3]!).toFixed(1)}`;
    }
    const numbers = frame.look.pxPerMm >= 3;
    return (
      <>
        <path d={path} className="stepped-casing" />
        <path d={path} className="stepped" />
        {runs.map((run) => {
          const turns = (run.toPass - run.fromPass) / 2;
          const top = passY(run.toPass);
          const tall = passY(run.fromPass) - top;
          const y = top + tall / 2;
          if (y < -40 || y > frame.height + 40) return null;
          const x = endX(run.line) + (run.side === 'left' ? -14 : 14);
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
              {halves(turns)}
            </text>
          );
        })}
      </>
    );
  },
  (one, other) =>
    one.charted === other.charted &&
    one.look.x === other.look.x &&
    one.look.y === other.look.y &&
    one.look.pxPerMm === other.look.pxPerMm &&
    one.width === other.width &&
    one.height === other.height,
);
