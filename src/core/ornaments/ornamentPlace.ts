import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece } from '../model/piece.ts';
import type { ClothPoint } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { clothWidth } from '../warp/endWidth.ts';

export interface OrnamentPlace {
  /** Nearest end and pass, 0-based. */
  readonly end: number;
  readonly pass: number;
  readonly words: string;
  readonly verdict: Verdict<'on-the-cloth' | 'past-the-edge' | 'off-the-cloth'>;
}

/**
 * Where an ornament sits, told from the ends and the height a weaver can count, and whether it stays on the cloth.
 * @param outline cloth mm.
 */
export function ornamentPlace(piece: Piece, at: ClothPoint, outline: readonly ClothPoint[]): OrnamentPlace {
  const { warp, loom, cloth, units } = piece;
  const end = Math.min(warp.ends - 1, Math.max(0, Math.round(at.x / loom.notchPitch + (warp.ends - 1) / 2)));
  const passes = Math.round(cloth.height / cloth.passHeight);
  const pass = Math.min(passes - 1, Math.max(0, Math.floor(at.y / cloth.passHeight)));
  const halfWidth = clothWidth(loom, warp) / 2;
  const past = Math.max(
    ...outline.map((point) => Math.max(Math.abs(point.x) - halfWidth, -point.y, point.y - cloth.height)),
  );
  const words = `Its middle is over end ${end + 1}, ${lengthInWords(Math.max(0, at.y), units)} above the twining.`;
  const off = Math.abs(at.x) > halfWidth || at.y < 0 || at.y > cloth.height;
  if (off) {
    return {
      end,
      pass,
      words,
      verdict: {
        verdict: 'off-the-cloth',
        sentence: 'Its middle is not on the cloth, so nothing holds it.',
        why: words,
        remedy: 'Move it onto the cloth, or hang it from the dowel.',
      },
    };
  }
  if (past > 1e-9) {
    return {
      end,
      pass,
      words,
      verdict: {
        verdict: 'past-the-edge',
        sentence: `It reaches ${lengthInWords(past, units)} past the edge of the cloth.`,
        why: words,
        remedy: 'Leave it if that is meant; it hangs free there.',
      },
    };
  }
  return {
    end,
    pass,
    words,
    verdict: { verdict: 'on-the-cloth', sentence: 'It lies on the cloth.', why: words, remedy: null },
  };
}
