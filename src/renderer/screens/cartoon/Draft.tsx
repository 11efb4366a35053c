import { formRings } from '../../../core/cartoon/formRings.ts';
import { formInBox } from '../../../core/cartoon/newShape.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Tool } from './cartoonStore.ts';
import type { Frame } from './frame.ts';

interface DraftProps {
  readonly tool: Tool;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly frame: Frame;
  readonly piece: Piece;
}

/** What is being drawn just now, before it is a shape. */
export function Draft({ tool, points, frame, piece }: DraftProps) {
  if (points.length === 0) return null;
  const write = (list: readonly { readonly x: number; readonly y: number }[]) =>
    `M${list.map(({ x, y }) => `${frame.x(x).toFixed(1)} ${frame.y(y).toFixed(1)}`).join('L')}`;
  let path = write(points);
  const [from, to] = [points[0]!, points[1]];
  if (tool !== 'polygon' && tool !== 'freehand' && tool !== 'select' && to) {
    const box = {
      left: Math.min(from.x, to.x),
      right: Math.max(from.x, to.x),
      bottom: Math.min(from.y, to.y),
      top: Math.max(from.y, to.y),
    };
    if (box.right - box.left < 0.5 || box.top - box.bottom < 0.5) return null;
    path = formRings(formInBox(tool, box), clothBox(piece))
      .map((ring) => {
        const list = [];
        for (let at = 0; at < ring.length; at += 2) list.push({ x: ring[at]!, y: ring[at + 1]! });
        return `${write(list)}Z`;
      })
      .join('');
  }
  return (
    <g>
      <path d={path} className="drawn-casing" />
      <path d={path} className="drawn" />
      {tool === 'polygon' &&
        points.map((point, index) => (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: points of a draft have no other name.
            key={index}
            className="handle"
            x={frame.x(point.x) - 6}
            y={frame.y(point.y) - 6}
            width={12}
            height={12}
          />
        ))}
    </g>
  );
}
