import type { Wefts } from './wefts.ts';

/**
 * A stretch of one weft over which its area neither parts nor joins: what a weaver would call one shape. Rows of the
 * weft from `first` to `last`, both included.
 */
export interface Part {
  readonly weft: number;
  readonly first: number;
  readonly last: number;
}

/** Cuts every weft where the area it weaves parts round something, or joins again above it. */
export function cutParts(wefts: Wefts, labels: Uint16Array, ends: number): readonly Part[] {
  const parts: Part[] = [];
  wefts.wefts.forEach((weft, index) => {
    let first = 0;
    for (let row = 1; row < weft.rows.length; row++) {
      const below = weft.rows[row - 1]!;
      const here = weft.rows[row]!;
      let cut = false;
      // Cells of the same label beside the weft's own run: a sister run below (joining) or above (parting).
      for (let end = here.low; end <= here.high && !cut; end++) {
        cut = (end < below.low || end > below.high) && labels[below.pass * ends + end] === weft.label;
      }
      for (let end = below.low; end <= below.high && !cut; end++) {
        cut = (end < here.low || end > here.high) && labels[here.pass * ends + end] === weft.label;
      }
      if (cut) {
        parts.push({ weft: index, first, last: row - 1 });
        first = row;
      }
    }
    parts.push({ weft: index, first, last: weft.rows.length - 1 });
  });
  return parts;
}

/**
 * The mirror image of every part about the middle of the cloth, -1 where it has none or is its own. Edges step one pass
 * apart, so a part and its image may differ by a pass at either end and by an end across.
 */
export function mirrorParts(parts: readonly Part[], wefts: Wefts, ends: number): Int32Array {
  const partner = new Int32Array(parts.length).fill(-1);
  const rowOf = (part: Part, share: number) =>
    wefts.wefts[part.weft]!.rows[part.first + Math.round((part.last - part.first) * share)]!;
  for (let one = 0; one < parts.length; one++) {
    if (partner[one] !== -1) continue;
    const part = parts[one]!;
    const label = wefts.wefts[part.weft]!.label;
    for (let two = one + 1; two < parts.length; two++) {
      const other = parts[two]!;
      if (partner[two] !== -1 || wefts.wefts[other.weft]!.label !== label) continue;
      const alike = [0, 0.25, 0.5, 0.75, 1].every((share) => {
        const here = rowOf(part, share);
        const there = rowOf(other, share);
        return (
          Math.abs(here.pass - there.pass) <= 2 &&
          Math.abs(here.low - (ends - 1 - there.high)) <= 1 &&
          Math.abs(here.high - (ends - 1 - there.low)) <= 1
        );
      });
      if (alike) {
        partner[one] = two;
        partner[two] = one;
        break;
      }
    }
  }
  return partner;
}
