import { type Affine, compose, identity, translation } from '../../geometry/affine.ts';
import { numbersIn } from './numbers.ts';

const degrees = (angle: number) => (angle * Math.PI) / 180;

function oneTransform(kind: string, n: readonly number[]): Affine | null {
  switch (kind) {
    case 'matrix':
      return n.length === 6 ? [n[0]!, n[1]!, n[2]!, n[3]!, n[4]!, n[5]!] : null;
    case 'translate':
      return n.length >= 1 ? translation(n[0]!, n[1] ?? 0) : null;
    case 'scale':
      return n.length >= 1 ? [n[0]!, 0, 0, n[1] ?? n[0]!, 0, 0] : null;
    case 'rotate': {
      if (n.length < 1) return null;
      const cosine = Math.cos(degrees(n[0]!));
      const sine = Math.sin(degrees(n[0]!));
      const [x, y] = [n[1] ?? 0, n[2] ?? 0];
      return [cosine, sine, -sine, cosine, x - cosine * x + sine * y, y - sine * x - cosine * y];
    }
    case 'skewx':
      return n.length >= 1 ? [1, 0, Math.tan(degrees(n[0]!)), 1, 0, 0] : null;
    case 'skewy':
      return n.length >= 1 ? [1, Math.tan(degrees(n[0]!)), 0, 1, 0, 0] : null;
    default:
      return null;
  }
}

/**
 * A transform list (SVG 1.1 § 7.6), the first one outermost.
 * @returns null when a part of it can't be read; the element then stays where it would be without.
 */
export function transformOf(text: string | undefined): Affine | null {
  if (text === undefined) return identity;
  // A list longer than this is no hand's work, and long texts could make a pattern slow.
  if (text.length > 4_000) return null;
  const list = text.trim();
  let whole: Affine = identity;
  let at = 0;
  const next = /([a-z]+)\s*\(([^()]*)\)[\s,]*/iy;
  while (at < list.length) {
    next.lastIndex = at;
    const match = next.exec(list);
    const one = match === null ? null : oneTransform(match[1]!.toLowerCase(), numbersIn(match[2]!, 7));
    if (match === null || one === null) return null;
    whole = compose(whole, one);
    at = next.lastIndex;
  }
  return whole.every(Number.isFinite) ? whole : null;
}
