import type { Block } from '../../core/model/plan.ts';

/** Where a block stands on the drawing: an SVG path round its cells, and the place for its number. */
export interface BlockOutline {
  readonly path: string;
  readonly labelX: number;
  readonly labelY: number;
}

/**
 * Round the cells of a block: up its right edge and down its left one. A block's passes follow one another and each
 * is one run of ends, so one ring is enough.
 * @param place end and pass (both may be fractions) to drawing units
 */
export function blockOutline(
  block: Pick<Block, 'rows'>,
  place: (end: number, pass: number) => { readonly x: number; readonly y: number },
): BlockOutline {
  const rows = [...block.rows].sort((a, b) => a.pass - b.pass);
  const right: string[] = [];
  const left: string[] = [];
  const write = (end: number, pass: number) => {
    const { x, y } = place(end, pass);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  let widest = rows[0]!;
  let lastLeft = -1;
  let lastRight = -1;
  for (const row of rows) {
    const from = Math.min(row.from, row.to);
    const to = Math.max(row.from, row.to) + 1;
    if (to !== lastRight) {
      if (lastRight >= 0) right.push(write(lastRight, row.pass));
      right.push(write(to, row.pass));
    }
    if (from !== lastLeft) {
      if (lastLeft >= 0) left.push(write(lastLeft, row.pass));
      left.push(write(from, row.pass));
    }
    lastLeft = from;
    lastRight = to;
    if (to - from > Math.abs(widest.to - widest.from) + 1) widest = row;
  }
  const top = rows.at(-1)!.pass + 1;
  right.push(write(lastRight, top));
  left.push(write(lastLeft, top));
  const middle = rows[Math.floor(rows.length / 2)]!;
  const label = place((middle.from + middle.to + 1) / 2, middle.pass + 0.5);
  return { path: `M${[...right, ...left.reverse()].join('L')}Z`, labelX: label.x, labelY: label.y };
}
