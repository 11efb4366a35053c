import type { Piece } from '../../core/model/piece.ts';
import { wrapOrder } from '../../core/warp/wrapOrder.ts';
import { palette } from './palette.ts';
import type { Pen } from './pen.ts';

/**
 * The loom from the front with its warp on, to scale, hung from the upper left corner (left, top) of a box.
 * @returns where the drawing ends below.
 */
export function drawLoom(pen: Pen, piece: Piece, left: number, top: number, width: number, height: number): number {
  const { loom, warp, cloth } = piece;
  const outer = { width: loom.openingWidth + 2 * loom.bar, height: loom.openingHeight + 2 * loom.bar };
  const scale = Math.min((width - 14) / outer.width, (height - 10) / outer.height);
  const x = (mm: number) => left + (width - 14) / 2 + mm * scale;
  const y = (mm: number) => top - outer.height * scale + (mm + loom.bar) * scale;
  const half = loom.openingWidth / 2;
  const wood = { colour: palette.woodLine, width: 0.3 };
  pen.box(x(-half - loom.bar), y(-loom.bar), outer.width * scale, outer.height * scale, palette.wood, wood);
  pen.box(x(-half), y(0), loom.openingWidth * scale, loom.openingHeight * scale, palette.white, wood);
  const notchX = (notch: number) => (notch - (loom.notches - 1) / 2) * loom.notchPitch;
  for (let notch = 0; notch < loom.notches; notch++) {
    for (const [from, to] of [
      [-loom.bar * 0.3, 0],
      [loom.openingHeight, loom.openingHeight + loom.bar * 0.3],
    ] as const) {
      pen.line(x(notchX(notch)), y(from), x(notchX(notch)), y(to), { colour: palette.woodLine, width: 0.2 });
    }
  }
  const apart = warp.stringsPerEnd === 2 ? loom.notchPitch * 0.16 : 0;
  for (let end = 0; end < warp.ends; end++) {
    for (const side of warp.stringsPerEnd === 2 ? [-1, 1] : [0]) {
      const at = x(notchX(warp.firstNotch + end) + side * apart);
      pen.line(at, y(-loom.bar * 0.25), at, y(loom.openingHeight + loom.bar * 0.25), {
        colour: palette.edge,
        width: 0.18,
      });
    }
  }
  const first = notchX(warp.firstNotch) - loom.notchPitch / 2;
  const last = notchX(warp.firstNotch + warp.ends - 1) + loom.notchPitch / 2;
  const base = cloth.baseAboveBottomBar;
  pen.box(x(first), y(base), (last - first) * scale, cloth.height * scale, null, {
    colour: palette.plan,
    width: 0.5,
    dash: [2, 1.3],
  });
  // Heights at the right, where the cloth begins and ends.
  const rim = x(half + loom.bar) + 2;
  for (const [mm, words] of [
    [0, 'bar'],
    [base, 'base'],
    [base + cloth.height, 'top'],
  ] as const) {
    if (mm === base && base * scale < 3) continue;
    pen.line(x(half + loom.bar), y(mm), rim, y(mm), { colour: palette.edge, width: 0.25 });
    pen.text(words, rim + 0.8, y(mm) - 1, { size: 7.5, colour: palette.second });
  }
  for (const end of [0, warp.ends - 1]) {
    const notch = warp.firstNotch + end;
    pen.text(`notch ${notch + 1}`, x(notchX(notch)), y(-loom.bar) - 4, {
      size: 8,
      align: end === 0 ? 'left' : 'right',
      face: 'strong',
    });
  }
  return y(-loom.bar) - 6;
}

/** How the string goes round the first ends and the last: numbered runs with arrows, bars above and below. */
export function drawWrapping(
  pen: Pen,
  piece: Piece,
  left: number,
  bottom: number,
  width: number,
  height: number,
): void {
  const { warp } = piece;
  const order = wrapOrder(warp);
  const shownAtStart = Math.min(order.length, warp.stringsPerEnd === 2 ? 6 : 5);
  const shownAtEnd = Math.min(order.length - shownAtStart, warp.stringsPerEnd === 2 ? 4 : 3);
  const places = shownAtStart + shownAtEnd + (shownAtEnd < order.length - shownAtStart ? 1.6 : 0);
  const step = width / (places + 1);
  const [low, high] = [bottom + 9, bottom + height - 9];
  const place = (at: number) =>
    at < shownAtStart ? left + step * (at + 1) : left + step * (places - (order.length - 1 - at));
  pen.box(left, high, width, 4, palette.wood, { colour: palette.woodLine, width: 0.3 });
  pen.box(left, low - 4, width, 4, palette.wood, { colour: palette.woodLine, width: 0.3 });
  const string = { colour: palette.ink, width: 0.6 };
  for (const run of order) {
    const shown = run.order < shownAtStart || run.order >= order.length - shownAtEnd;
    if (!shown) continue;
    const x = place(run.order);
    pen.line(x, low - 1, x, high + 1, string);
    const middle = (low + high) / 2;
    const tip = run.direction === 'up' ? 2.2 : -2.2;
    pen.path([[x - 1.5, middle - tip, x, middle + tip, x + 1.5, middle - tip]], true, palette.ink, null);
    pen.box(x - 3, middle - 8.4, 6, 4.6, palette.white);
    pen.text(String(run.order + 1), x, middle - 7.4, { size: 8.5, align: 'middle', face: 'strong' });
    const followed = run.loop !== null && (run.order + 1 < shownAtStart || run.order >= order.length - shownAtEnd);
    if (followed && run.loop !== null) {
      const over = run.loop.bar === 'top' ? high + 1 : low - 1;
      const out = run.loop.bar === 'top' ? over + 4.4 : over - 4.4;
      pen.path([[x, over, x, out, place(run.order + 1), out, place(run.order + 1), over]], false, null, string);
    }
    const comesFrom = run.order > 0 ? order[run.order - 1]!.loop : null;
    const hiddenAfter = run.loop !== null && !followed ? { bar: run.loop.bar, way: 1 } : null;
    const hiddenBefore =
      comesFrom !== null && run.order === order.length - shownAtEnd ? { bar: comesFrom.bar, way: -1 } : null;
    for (const hidden of [hiddenAfter, hiddenBefore]) {
      if (hidden === null || shownAtEnd === order.length - shownAtStart) continue;
      const from = hidden.bar === 'top' ? high + 1 : low - 1;
      const out = hidden.bar === 'top' ? from + 4.4 : from - 4.4;
      pen.path([[x, from, x, out, x + hidden.way * step * 0.6, out]], false, null, { ...string, dash: [1, 1] });
    }
    if (run.order % warp.stringsPerEnd === 0) {
      const span = warp.stringsPerEnd === 2 ? (place(run.order + 1) - x) / 2 : 0;
      pen.text(`end ${run.end + 1}`, x + span, bottom - 3.4, { size: 8, align: 'middle', colour: palette.second });
    }
  }
  for (const [at, words] of [
    [order[0]!, 'start'],
    [order.at(-1)!, 'finish'],
  ] as const) {
    const x = place(at.order);
    const y = at.order === 0 || at.direction === 'down' ? low - 2 : high + 2;
    pen.circle(x, y, 1.5, palette.ink);
    pen.text(words, x + (at.order === 0 ? -2.6 : 2.6), y - 1.2, {
      size: 8,
      align: at.order === 0 ? 'right' : 'left',
      face: 'strong',
    });
  }
  if (shownAtEnd < order.length - shownAtStart) {
    const x = (place(shownAtStart - 1) + place(order.length - shownAtEnd)) / 2;
    for (const offset of [-2.4, 0, 2.4]) pen.circle(x + offset, (low + high) / 2, 0.5, palette.ink);
  }
}
