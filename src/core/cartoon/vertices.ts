import type { PathCommand, Shape } from '../model/piece.ts';
import { clothMm } from '../model/units.ts';

/** A corner of a polygon or the end of a stretch of path: something that can be taken hold of. */
export interface Vertex {
  /** Place in the polygon's points or the path's commands. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
}

/** The corners of a polygon or path as stored, so before turning: work the turn in first. Other forms have none. */
export function verticesOf(shape: Shape): Vertex[] {
  const { form } = shape;
  if (form.kind === 'polygon') return form.points.map(({ x, y }, index) => ({ index, x, y }));
  if (form.kind !== 'path') return [];
  return form.commands.flatMap((command, index) =>
    command.to === 'close' ? [] : [{ index, x: command.x, y: command.y }],
  );
}

/** Where the pen stands before the command at `index`, and whether anything is drawn from there. */
function penBefore(commands: readonly PathCommand[], index: number): { readonly x: number; readonly y: number } {
  let start = { x: 0, y: 0 };
  let pen = start;
  for (const command of commands.slice(0, index)) {
    if (command.to === 'close') pen = start;
    else pen = { x: command.x, y: command.y };
    if (command.to === 'move') start = pen;
  }
  return pen;
}

/** One corner moved to (x, y), the handles of curves that meet there with it. */
export function moveVertex(shape: Shape, index: number, x: number, y: number): Shape {
  const { form } = shape;
  if (form.kind === 'polygon') {
    const points = form.points.map((point, at) => (at === index ? { x: clothMm(x), y: clothMm(y) } : point));
    return { ...shape, form: { ...form, points } };
  }
  const moved = form.kind === 'path' ? form.commands[index] : undefined;
  if (form.kind !== 'path' || moved === undefined || moved.to === 'close') return shape;
  const dx = x - moved.x;
  const dy = y - moved.y;
  const commands = form.commands.map((command, at): PathCommand => {
    if (at === index && command.to === 'cubic') return { ...command, x2: command.x2 + dx, y2: command.y2 + dy, x, y };
    if (at === index && command.to !== 'close') return { ...command, x, y };
    if (at === index + 1 && command.to === 'cubic') return { ...command, x1: command.x1 + dx, y1: command.y1 + dy };
    return command;
  });
  return { ...shape, form: { ...form, commands } };
}

/** A cubic cut in two at parameter t (de Casteljau). */
function splitCubic(
  from: { readonly x: number; readonly y: number },
  cubic: Extract<PathCommand, { to: 'cubic' }>,
  t: number,
): PathCommand[] {
  const between = (a: number, b: number) => a + (b - a) * t;
  const halves = (p0: number, p1: number, p2: number, p3: number) => {
    const a = between(p0, p1);
    const b = between(p1, p2);
    const c = between(p2, p3);
    const d = between(a, b);
    const e = between(b, c);
    return { a, c, d, e, at: between(d, e) };
  };
  const x = halves(from.x, cubic.x1, cubic.x2, cubic.x);
  const y = halves(from.y, cubic.y1, cubic.y2, cubic.y);
  return [
    { to: 'cubic', x1: x.a, y1: y.a, x2: x.d, y2: y.d, x: x.at, y: y.at },
    { to: 'cubic', x1: x.e, y1: y.e, x2: x.c, y2: y.c, x: cubic.x, y: cubic.y },
  ];
}

/**
 * A new corner on the edge that ends at the vertex `index` (for a polygon's vertex 0, the edge that closes it), a share
 * `t` of the way along (0 to 1). The outline doesn't change until the corner is moved.
 */
export function insertVertex(shape: Shape, index: number, t: number): Shape {
  const { form } = shape;
  const share = Math.min(1, Math.max(0, t));
  if (form.kind === 'polygon') {
    const to = form.points[index];
    const from = form.points[(index + form.points.length - 1) % form.points.length];
    if (to === undefined || from === undefined) return shape;
    const middle = { x: clothMm(from.x + (to.x - from.x) * share), y: clothMm(from.y + (to.y - from.y) * share) };
    const at = index === 0 ? form.points.length : index;
    return { ...shape, form: { ...form, points: form.points.toSpliced(at, 0, middle) } };
  }
  if (form.kind !== 'path') return shape;
  const command = form.commands[index];
  if (command === undefined || command.to === 'move') return shape;
  const from = penBefore(form.commands, index);
  if (command.to === 'cubic') {
    return {
      ...shape,
      form: { ...form, commands: form.commands.toSpliced(index, 1, ...splitCubic(from, command, share)) },
    };
  }
  const to = command.to === 'close' ? penBefore(form.commands, index + 1) : command;
  const corner: PathCommand = { to: 'line', x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  return { ...shape, form: { ...form, commands: form.commands.toSpliced(index, 0, corner) } };
}

/** One corner taken out; a ring that would be left with fewer than three stays as it is. */
export function deleteVertex(shape: Shape, index: number): Shape {
  const { form } = shape;
  if (form.kind === 'polygon') {
    if (form.points.length <= 3 || index < 0 || index >= form.points.length) return shape;
    return { ...shape, form: { ...form, points: form.points.toSpliced(index, 1) } };
  }
  const gone = form.kind === 'path' ? form.commands[index] : undefined;
  if (form.kind !== 'path' || gone === undefined || gone.to === 'close') return shape;
  let first = index;
  while (first > 0 && form.commands[first]!.to !== 'move') first--;
  let last = index + 1;
  while (last < form.commands.length && form.commands[last]!.to !== 'move') last++;
  const corners = form.commands.slice(first, last).filter((command) => command.to !== 'close').length;
  if (corners <= 3) return shape;
  const commands = form.commands.toSpliced(index, 1);
  const next = commands[index];
  if (gone.to === 'move' && next !== undefined && next.to !== 'close') {
    commands[index] = { to: 'move', x: next.x, y: next.y };
  }
  return { ...shape, form: { ...form, commands } };
}
