import type { Weave } from './weave.ts';

/** What the cloth shows at a place: the yarn there and how the light meets it. */
export interface ClothHit {
  /** Yarn index, −1 where no weft lies. */
  yarn: number;
  /** 1 on the crown of a float, less down its flanks, least between floats. */
  height: number;
  /** −1 left flank to 1 right flank of the float's own arch. */
  lean: number;
  /** Numbers that differ float by float. */
  mark: number;
}

export interface Floats {
  /** Fills `hit` for a place in the loom frame; returns whether weft lies there. */
  readonly at: (x: number, y: number, hit: ClothHit) => boolean;
  /** Index of the end nearest to x at a height above the bar line. */
  readonly nearestEnd: (x: number, y: number) => number;
  /** x of an end at a height above the bar line, read from a table of every millimetre. */
  readonly xAt: (end: number, y: number) => number;
}

/**
 * The weft as arched floats over every other end and as small loops where it turns round the outermost end of an area.
 * The same test paints the cloth and gives the truth, so the two can't part.
 */
export function floats(weave: Weave): Floats {
  const { scene, ends, passY, centreX, colours } = weave;
  const { loom, cloth, warp } = scene;
  const rows = Math.ceil(loom.openingHeight) + 2;
  const table = new Float64Array(rows * ends);
  for (let row = 0; row < rows; row++)
    for (let end = 0; end < ends; end++) table[row * ends + end] = weave.stringX(end, row);
  const endHalf = warp.strings === 2 ? warp.apart + warp.diameter / 2 : warp.diameter / 2;
  const reach = endHalf + cloth.weft;
  const passes = cloth.passes;
  const most = passY.length - 1;
  const beadHalf = Float64Array.from({ length: most }, (_, pass) => (passY[pass + 1]! - passY[pass]!) * 1.02);

  const xAt = (end: number, y: number): number => {
    const clamped = Math.max(0, Math.min(rows - 2, y));
    const row = Math.floor(clamped);
    const share = clamped - row;
    return table[row * ends + end]! * (1 - share) + table[(row + 1) * ends + end]! * share;
  };
  const nearestEnd = (x: number, y: number): number => {
    const first = xAt(0, y);
    const last = xAt(ends - 1, y);
    let end = Math.max(0, Math.min(ends - 1, Math.round(((x - first) / (last - first)) * (ends - 1))));
    while (end > 0 && Math.abs(xAt(end - 1, y) - x) < Math.abs(xAt(end, y) - x)) end--;
    while (end < ends - 1 && Math.abs(xAt(end + 1, y) - x) < Math.abs(xAt(end, y) - x)) end++;
    return end;
  };
  const passAt = (level: number): number => {
    let pass = Math.max(0, Math.min(most - 1, Math.floor(level / cloth.pass)));
    while (pass > 0 && passY[pass]! > level) pass--;
    while (pass < most - 1 && passY[pass + 1]! <= level) pass++;
    return pass;
  };

  const at = (x: number, y: number, hit: ClothHit): boolean => {
    hit.yarn = -1;
    const above = y - cloth.base;
    if (above < -2 * cloth.pass) return false;
    // Level: the height in the middle of the warp that lies here once the tilt is taken away.
    const level = above / (weave.raised(1000, x - centreX) / 1000);
    if (level > passY[most]! + 2) return false;
    if (x < xAt(0, y) - reach - 1 || x > xAt(ends - 1, y) + reach + 1) return false;
    const near = nearestEnd(x, y);
    const middle = passAt(level);
    let best = -1;
    for (let end = Math.max(0, near - 1); end <= Math.min(ends - 1, near + 1); end++) {
      for (let pass = Math.max(0, middle - 1); pass <= Math.min(most - 1, middle + 1); pass++) {
        if (pass >= passes[end]!) continue;
        const over = (end + pass) % 2 === cloth.parity;
        const freeLeft = end === 0 || passes[end - 1]! <= pass;
        const freeRight = end === ends - 1 || passes[end + 1]! <= pass;
        if (!over && !freeLeft && !freeRight) continue;
        const mark = ((end * 131 + pass * 71) % 97) / 97;
        const centre = xAt(end, y) + (mark - 0.5) * 0.12;
        const dy = (level - (passY[pass]! + passY[pass + 1]!) / 2 - (mark - 0.5) * 0.12 * cloth.pass) / beadHalf[pass]!;
        if (dy <= -1 || dy >= 1) continue;
        const dx = x - centre;
        const leftHalf = over
          ? freeLeft
            ? reach
            : (centre - xAt(end - 1, y)) * 0.6
          : freeLeft
            ? reach * (0.9 + 0.08 * mark)
            : 0;
        const rightHalf = over
          ? freeRight
            ? reach
            : (xAt(end + 1, y) - centre) * 0.6
          : freeRight
            ? reach * (0.9 + 0.08 * mark)
            : 0;
        const halfLength = dx < 0 ? leftHalf : rightHalf;
        if (halfLength <= 0) continue;
        const share = Math.abs(dx) / halfLength;
        const room = 1 - share * share * share - dy * dy;
        if (room <= 0) continue;
        const rise = Math.sqrt(1 - dy * dy) * (1 - 0.35 * share * share) * (over ? 1 : 0.7);
        if (rise > best) {
          best = rise;
          hit.yarn = colours[pass]![end]!;
          hit.height = rise;
          hit.lean = dy;
          hit.mark = mark;
        }
      }
    }
    if (best >= 0) return true;
    // Between the floats the weft lies deep, but it is there: wherever the nearest end is woven a pass higher.
    const within = x > xAt(0, y) - endHalf * 0.5 && x < xAt(ends - 1, y) + endHalf * 0.5;
    if (within && level > 0 && level < passY[passes[near]!]! - 0.5 * cloth.pass) {
      hit.yarn = colours[middle]?.[near] ?? -1;
      if (hit.yarn < 0) return false;
      hit.height = 0.12;
      hit.lean = 0;
      hit.mark = 0.5;
      return true;
    }
    return false;
  };
  return { at, nearestEnd, xAt };
}
