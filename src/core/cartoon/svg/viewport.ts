import type { Affine } from '../../geometry/affine.ts';
import { numbersIn } from './numbers.ts';

/** A page inside a drawing, in user units of what holds it. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** @returns the viewBox; null when there is none, or `empty` when it has no size. */
export function viewBoxOf(text: string | undefined): Viewport | 'empty' | null {
  if (text === undefined) return null;
  const n = numbersIn(text, 4);
  if (n.length < 4 || !n.every(Number.isFinite)) return 'empty';
  if (n[2]! <= 0 || n[3]! <= 0) return 'empty';
  return { x: n[0]!, y: n[1]!, width: n[2]!, height: n[3]! };
}

/** How a viewBox is laid into its place (SVG 1.1 § 7.8): kept in proportion and centred unless it says otherwise. */
export function viewBoxMap(box: Viewport, place: Viewport, preserve: string | undefined): Affine {
  const words = (preserve ?? '').trim().split(/\s+/);
  const align = words.find((word) => /^(none|x(Min|Mid|Max)Y(Min|Mid|Max))$/.test(word)) ?? 'xMidYMid';
  let sx = place.width / box.width;
  let sy = place.height / box.height;
  if (align !== 'none') {
    const both = words.includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
    sx = both;
    sy = both;
  }
  const share = (word: string) => (word === 'Min' ? 0 : word === 'Max' ? 1 : 0.5);
  const x = align === 'none' ? 0 : share(align.slice(1, 4));
  const y = align === 'none' ? 0 : share(align.slice(5, 8));
  return [
    sx,
    0,
    0,
    sy,
    place.x - box.x * sx + (place.width - box.width * sx) * x,
    place.y - box.y * sy + (place.height - box.height * sy) * y,
  ];
}
