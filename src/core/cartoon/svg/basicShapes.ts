import { arcCubics } from '../../geometry/arcCubics.ts';
import type { PathCommand } from '../../model/piece.ts';
import type { DrawingNode } from './drawingNode.ts';
import { lengthOf, numbersIn } from './numbers.ts';
import { pathCommandsOf } from './pathData.ts';
import type { Viewport } from './viewport.ts';

const ellipse = (x: number, y: number, rx: number, ry: number): PathCommand[] =>
  rx > 0 && ry > 0
    ? [{ to: 'move', x: x + rx, y }, ...arcCubics(x, y, rx, ry, 0, 0, 2 * Math.PI), { to: 'close' }]
    : [];

function rectangle(x: number, y: number, width: number, height: number, rx: number, ry: number): PathCommand[] {
  if (!(width > 0 && height > 0)) return [];
  const right = x + width;
  const bottom = y + height;
  if (!(rx > 0 && ry > 0)) {
    return [
      { to: 'move', x, y },
      { to: 'line', x: right, y },
      { to: 'line', x: right, y: bottom },
      { to: 'line', x, y: bottom },
      { to: 'close' },
    ];
  }
  const a = Math.min(rx, width / 2);
  const b = Math.min(ry, height / 2);
  const quarter = Math.PI / 2;
  return [
    { to: 'move', x: x + a, y },
    { to: 'line', x: right - a, y },
    ...arcCubics(right - a, y + b, a, b, 0, -quarter, quarter),
    { to: 'line', x: right, y: bottom - b },
    ...arcCubics(right - a, bottom - b, a, b, 0, 0, quarter),
    { to: 'line', x: x + a, y: bottom },
    ...arcCubics(x + a, bottom - b, a, b, 0, quarter, quarter),
    { to: 'line', x, y: y + b },
    ...arcCubics(x + a, y + b, a, b, 0, 2 * quarter, quarter),
    { to: 'close' },
  ];
}

function pointList(text: string | undefined, closed: boolean, most: number): PathCommand[] {
  const n = numbersIn(text ?? '', 2 * most);
  const commands: PathCommand[] = [];
  for (let at = 0; at + 1 < n.length; at += 2) {
    commands.push({ to: at === 0 ? 'move' : 'line', x: n[at]!, y: n[at + 1]! });
  }
  if (closed && commands.length > 0) commands.push({ to: 'close' });
  return commands;
}

/**
 * What one element draws, in its own user units, y down.
 * @param page what per cents are of.
 * @returns null when the element is not one that draws; `whole` is false when its data broke off.
 */
export function drawnBy(
  node: DrawingNode,
  page: Viewport,
  most: number,
): { readonly commands: PathCommand[]; readonly whole: boolean } | null {
  const across = (name: string, fallback = 0) => lengthOf(node.attributes.get(name), page.width, fallback);
  const down = (name: string, fallback = 0) => lengthOf(node.attributes.get(name), page.height, fallback);
  const diagonal = Math.hypot(page.width, page.height) / Math.SQRT2;
  const whole = (commands: PathCommand[]) => ({ commands, whole: true });
  switch (node.name) {
    case 'path':
      return pathCommandsOf(node.attributes.get('d') ?? '', most);
    case 'rect': {
      const rx = across('rx', Number.NaN);
      const ry = down('ry', Number.NaN);
      return whole(
        rectangle(
          across('x'),
          down('y'),
          across('width'),
          down('height'),
          Number.isNaN(rx) ? ry : rx,
          Number.isNaN(ry) ? rx : ry,
        ),
      );
    }
    case 'circle': {
      const r = lengthOf(node.attributes.get('r'), diagonal, 0);
      return whole(ellipse(across('cx'), down('cy'), r, r));
    }
    case 'ellipse': {
      const rx = across('rx', Number.NaN);
      const ry = down('ry', Number.NaN);
      return whole(ellipse(across('cx'), down('cy'), Number.isNaN(rx) ? ry : rx, Number.isNaN(ry) ? rx : ry));
    }
    case 'line':
      return whole([
        { to: 'move', x: across('x1'), y: down('y1') },
        { to: 'line', x: across('x2'), y: down('y2') },
      ]);
    case 'polyline':
      return whole(pointList(node.attributes.get('points'), false, most));
    case 'polygon':
      return whole(pointList(node.attributes.get('points'), true, most));
    default:
      return null;
  }
}
