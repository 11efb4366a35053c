import type { PlainPoint } from './plainPoint.ts';

/** In the order the reading asks for them, with the loom upright: bottom left, bottom right, top right, top left. */
export const cornerNames = ['bottomLeft', 'bottomRight', 'topRight', 'topLeft'] as const;
export type CornerName = (typeof cornerNames)[number];

export type Fit =
  | { readonly kind: 'fits' }
  | { readonly kind: 'crossed' }
  | { readonly kind: 'mirrored' }
  /** The corners' own proportions differ from the opening's by this share; positive is too wide. */
  | { readonly kind: 'doubtful'; readonly tooWide: number };

/** How much the proportions may differ before it is said: a photograph taken from a quarter to one side still passes. */
const LIMIT = 0.15;

/**
 * Whether four marked corners can be the inner corners of an opening of this size.
 * @param points px of the photograph as displayed, y down, in the order of `cornerNames`.
 */
export function fitOf(points: readonly PlainPoint[], openingWidth: number, openingHeight: number): Fit {
  const turns = points.map((point, index) => {
    const next = points[(index + 1) % 4]!;
    const after = points[(index + 2) % 4]!;
    return (next.x - point.x) * (after.y - next.y) - (next.y - point.y) * (after.x - next.x);
  });
  // With y down, bottom left to bottom right to top right turns anticlockwise to the eye: a negative product.
  if (turns.every((turn) => turn > 0)) return { kind: 'mirrored' };
  if (!turns.every((turn) => turn < 0)) return { kind: 'crossed' };
  const length = (one: number, other: number) =>
    Math.hypot(points[one]!.x - points[other]!.x, points[one]!.y - points[other]!.y);
  const width = (length(0, 1) + length(3, 2)) / 2;
  const height = (length(0, 3) + length(1, 2)) / 2;
  const tooWide = width / height / (openingWidth / openingHeight) - 1;
  return Math.abs(tooWide) <= LIMIT ? { kind: 'fits' } : { kind: 'doubtful', tooWide };
}
