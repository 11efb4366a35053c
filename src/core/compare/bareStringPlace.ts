import type { EndReading, Flag, LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { median } from '../photo/statistics.ts';

/**
 * The middle of an end's bare part, cloth frame, mm, were it straight, and the half of the warp it lies in. What of it was
 * not seen is taken as planned, its fell as that of the others.
 */
export function bareStringPlace(
  end: EndReading,
  reading: LoomReading,
  piece: Piece,
): { readonly side: Flag['side']; readonly x: number; readonly y: number } {
  const planned = (end.index - (piece.warp.ends - 1) / 2) * piece.loom.notchPitch;
  const fells = reading.ends.flatMap((one) => (one.fell ? [one.fell.value] : []));
  const fell = end.fell?.value ?? (fells.length > 0 ? median(fells) : 0);
  const bar = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
  return {
    side: planned === 0 ? null : planned < 0 ? 'left' : 'right',
    x: ((end.xAtFell?.value ?? planned) + (end.notchX?.value ?? planned)) / 2,
    y: (fell + bar) / 2,
  };
}
