import { colourHex } from '../colour.ts';
import type { Floats } from './floats.ts';
import type { LoomScene } from './scene.ts';
import { covers, placed } from './things.ts';
import type { Weave } from './weave.ts';

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * Truth in the form of the rendered photographs, measured off the same test that paints the cloth: fell of an end is
 * the median over seven columns within 0.3 pitch of its course, a selvedge row a running median over
 * ± max(2 mm, 3 passes), null beside ends not woven so high or where something lies over the edge.
 */
export function drawnTruth(
  weave: Weave,
  cloth: Floats,
  corners: readonly (readonly [number, number])[],
  distance: number,
) {
  const { scene, ends, notchX, centreX, passY, fell: woven } = weave;
  const { base, pass } = scene.cloth;
  const pitch = scene.loom.pitch;
  const hit = { yarn: -1, height: 0, lean: 0, mark: 0 };
  const missing = new Set(scene.warp.missing);
  const things = scene.things.map(placed);
  const fell = Array.from({ length: ends }, (_, end) => {
    const tops: number[] = [];
    for (let column = -3; column <= 3; column++) {
      let y = base + woven[end]! + 3 * pass + 2;
      while (y > base && !cloth.at(weave.stringX(end, y) + column * 0.1 * pitch, y, hit)) y -= 0.02;
      tops.push(Math.max(0, y - base));
    }
    return median(tops);
  });
  const highest = Math.max(...fell);
  const reach = pitch * 2 + scene.cloth.weft + 2;
  const rows: [number, number, number][] = [];
  for (let y = 2; y < highest - 1; y += 1) {
    let left = weave.stringX(0, base + y) - reach;
    let right = weave.stringX(ends - 1, base + y) + reach;
    while (left < right && !cloth.at(left, base + y, hit)) left += 0.02;
    while (right > left && !cloth.at(right, base + y, hit)) right -= 0.02;
    if (right - left > 2) rows.push([y, left - centreX, right - centreX]);
  }
  const window = Math.max(2, 3 * pass);
  const selvedge: { y_mm: number; left_mm: number | null; right_mm: number | null }[] = [];
  for (let y = 3; y < highest - window / 2; y += 2) {
    const near = rows.filter((row) => Math.abs(row[0] - y) <= window);
    if (near.length < 3) continue;
    const side = (end: number, column: 1 | 2): number | null => {
      if (fell[end]! < y + 1) return null;
      const x = median(near.map((row) => row[column]));
      return things.some((thing) => covers(thing, x + centreX, base + y, 4)) ? null : x;
    };
    const left_mm = side(0, 1);
    const right_mm = side(ends - 1, 2);
    if (left_mm !== null || right_mm !== null) selvedge.push({ y_mm: y, left_mm, right_mm });
  }
  const hidden = (end: number): boolean =>
    missing.has(end) ||
    things.some((thing) => covers(thing, weave.stringX(end, base + fell[end]!), base + fell[end]!, 5));
  const passes = Math.max(...scene.cloth.passes);
  return {
    name: scene.name,
    note: 'Millimetres. x from the centre of the planned warp, y from the bottom of the cloth (top of the twining). Measured off the shape that was painted.',
    selvedge,
    ends: fell.map((height, end) => ({
      index: end,
      notch_x_mm: notchX[end]! - centreX,
      fell_mm: hidden(end) ? null : height,
      missing: missing.has(end),
      passes: scene.cloth.passes[end]!,
      x_at_base_mm: weave.insideX(end, 0) - centreX,
      x_at_fell_mm: weave.stringX(end, base + height) - centreX,
      bow_mm: weave.bow[end]!,
    })),
    pass_mm_mean: passY[passes]! / passes,
    colour_rows: weave.colours,
    pass_y_mm: Array.from(passY.subarray(0, passes + 1)),
    defects: {
      drawin_left: scene.cloth.drawInLeft,
      drawin_right: scene.cloth.drawInRight,
      ...(scene.cloth.tilt ? { fell_tilt: scene.cloth.tilt } : {}),
      ...(scene.cloth.spread ? { spread: scene.cloth.spread } : {}),
      ...(missing.size ? { missing: [...missing] } : {}),
      ...(scene.warp.swapped.length ? { swapped: scene.warp.swapped } : {}),
      ...(scene.warp.slack.length ? { slack: scene.warp.slack } : {}),
      beat: scene.cloth.beat,
    },
    camera: writtenCamera(scene, distance),
    lens_k1: scene.camera.k1,
    lens_k2: scene.camera.k2,
    /** Where the bar lines meet the opening's sides in the picture as displayed: bottom left, bottom right, top right, top left. */
    corners_px: corners,
    mirrored: scene.finish.mirrored,
  };
}

/** The camera as the renderer's truth writes it: degrees, focal length for a 36 mm picture, mm. */
export function writtenCamera(scene: LoomScene, distance: number) {
  const { pitch, yaw, roll, focal, targetX, targetY } = scene.camera;
  const degrees = 180 / Math.PI;
  return {
    lens: focal * 36,
    target: [targetX, scene.loom.openingHeight / 2 + targetY, 0],
    pitch: pitch * degrees,
    yaw: yaw * degrees,
    roll: roll * degrees,
    dist: distance,
    dof: null,
  };
}

/** The weaver's brief of a scene, in the flat form. `scene` itself holds what went wrong; the brief holds the plan. */
export function drawnBrief(scene: LoomScene) {
  const { loom, warp, cloth } = scene;
  return {
    name: scene.name,
    loom: {
      kind: loom.holds === 'nails' ? 'frame with nails' : 'notched frame',
      notch_pitch_mm: loom.pitch,
      opening_width_mm: loom.openingWidth,
      opening_height_mm: loom.openingHeight,
      bar_mm: loom.bar,
      notches: loom.notches,
      depth_mm: loom.depth,
    },
    warp: {
      ends: warp.ends,
      strings_per_end: warp.strings,
      string_diameter_mm: warp.diameter,
      first_notch: warp.firstNotch,
    },
    cloth: {
      base_above_bottom_bar_mm: cloth.base,
      width_mm: warp.ends * loom.pitch,
      height_mm: cloth.height,
      pass_mm: cloth.pass,
      header_passes: cloth.header,
    },
    yarns: cloth.yarns.map(colourHex),
    ground: cloth.ground,
    header_yarn: cloth.headerYarn,
    shapes: cloth.shapes,
    scale_card: scene.things.some((thing) => thing.kind === 'card') ? 'ISO/IEC 7810 ID-1 card lies on the warp' : null,
  };
}
