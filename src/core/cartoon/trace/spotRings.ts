import type { Spots } from './spots.ts';

/** A closed walk round an edge of one spot: corners of pixels x, y, x, y …, one for every pixel side, y down. */
export interface SpotRing {
  readonly spot: number;
  readonly corners: Int32Array;
}

/** Ways along a pixel side: east, south, west, north. */
const stepX = [1, 0, -1, 0] as const;
const stepY = [0, 1, 0, -1] as const;
/** Where the pixel on the right hand lies from a side's first corner, by way. */
const rightX = [0, -1, -1, 0] as const;
const rightY = [0, 0, -1, -1] as const;

/**
 * Every edge of every spot, outer edges and holes, walked with the spot on the right hand. Where two spots of one yarn
 * touch only at a corner they are kept apart. Filled by the even-odd rule, a spot's rings are exactly its pixels.
 */
export function spotRings(spots: Spots): SpotRing[] {
  const { width, height, of } = spots;
  const at = (x: number, y: number) => (x < 0 || y < 0 || x >= width || y >= height ? -1 : of[y * width + x]!);
  const across = width + 1;
  const right = (x: number, y: number, way: number) => at(x + rightX[way]!, y + rightY[way]!);
  const left = (x: number, y: number, way: number) => at(x + rightX[(way + 3) % 4]!, y + rightY[(way + 3) % 4]!);
  const isSide = (x: number, y: number, way: number) => {
    const spot = right(x, y, way);
    return spot >= 0 && spot !== left(x, y, way);
  };
  const walked = new Uint8Array(across * (height + 1));
  const rings: SpotRing[] = [];
  for (let startY = 0; startY <= height; startY++) {
    for (let startX = 0; startX <= width; startX++) {
      for (let startWay = 0; startWay < 4; startWay++) {
        if ((walked[startY * across + startX]! & (1 << startWay)) !== 0 || !isSide(startX, startY, startWay)) continue;
        const spot = right(startX, startY, startWay);
        const corners: number[] = [];
        let [x, y, way] = [startX, startY, startWay];
        do {
          corners.push(x, y);
          walked[y * across + x]! |= 1 << way;
          x += stepX[way]!;
          y += stepY[way]!;
          // The right turn keeps to the same spot where two touch at a corner.
          for (const turn of [1, 0, 3]) {
            const next = (way + turn) % 4;
            if (!isSide(x, y, next) || right(x, y, next) !== spot) continue;
            way = next;
            break;
          }
        } while (x !== startX || y !== startY || way !== startWay);
        rings.push({ spot, corners: Int32Array.from(corners) });
      }
    }
  }
  return rings;
}
