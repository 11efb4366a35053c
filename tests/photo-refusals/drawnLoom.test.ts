import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { trueLoomToPhoto } from '../../scripts/photo/trueCamera.ts';
import { randomScene } from '../../scripts/pictures/drawnLoom/randomScene.ts';
import type { LoomScene } from '../../scripts/pictures/drawnLoom/scene.ts';
import { drawnLoom } from '../../scripts/pictures/drawnLoom.ts';
import { parseBrief } from '../../src/core/project/brief.ts';

const small = (seed: number, change: Partial<LoomScene['finish']> = {}): LoomScene => {
  const scene = randomScene('small', seed);
  return {
    ...scene,
    width: 210,
    height: 280,
    things: [],
    camera: { ...scene.camera, k2: 0 },
    finish: { ...scene.finish, noise: 0, quality: 95, orientation: 1, mirrored: false, ...change },
  };
};
const shown = async (jpeg: Buffer) => sharp(jpeg).rotate().raw().toBuffer({ resolveWithObject: true });

test('the same seed draws the same photograph', async () => {
  const [one, two] = [await drawnLoom(small(3)), await drawnLoom(small(3))];
  expect(one.jpeg.equals(two.jpeg)).toBe(true);
  expect(one.truth).toEqual(two.truth);
});

const upright = drawnLoom(small(5)).then(({ jpeg }) => shown(jpeg));

test.each([2, 3, 4, 5, 6, 7, 8])('with EXIF turn %i the photograph is shown as it is without', async (orientation) => {
  const plain = await upright;
  const turned = await shown((await drawnLoom(small(5, { orientation }))).jpeg);
  expect([turned.info.width, turned.info.height]).toEqual([plain.info.width, plain.info.height]);
  let apart = 0;
  for (let at = 0; at < plain.data.length; at++) apart += Math.abs(plain.data[at]! - turned.data[at]!);
  expect(apart / plain.data.length).toBeLessThan(2.5);
});

test.each([11, 12, 13, 14])('brief and truth of scene %i agree with its weaving and its camera', async (seed) => {
  const scene = small(seed);
  const { brief, truth } = await drawnLoom(scene);
  expect(parseBrief(JSON.parse(JSON.stringify(brief))).ok).toBe(true);
  expect(truth.ends.length).toBe(brief.warp.ends);
  for (const end of truth.ends) {
    if (end.fell_mm === null) continue;
    // The float on top reaches about half a pass beyond its own pass line, a float that isn't there half a pass short.
    const rise =
      1 + (scene.cloth.tilt * end.notch_x_mm) / (brief.cloth.width_mm * Math.max(10, truth.pass_y_mm.at(-1)!));
    expect(Math.abs(end.fell_mm - truth.pass_y_mm[end.passes]! * rise)).toBeLessThan(1.1 * scene.cloth.pass);
  }
  for (const [row, cells] of truth.colour_rows.entries())
    expect(cells.filter((yarn) => yarn >= 0).length).toBe(truth.ends.filter((end) => end.passes > row).length);

  const folder = mkdtempSync(join(tmpdir(), 'drawn-loom-'));
  try {
    const stem = join(folder, 'small');
    writeFileSync(`${stem}.truth.json`, JSON.stringify(truth));
    writeFileSync(`${stem}.brief.json`, JSON.stringify(brief));
    const seen = trueLoomToPhoto(`${stem}.truth.json`, `${stem}.brief.json`, scene);
    const { opening_width_mm: w, opening_height_mm: h } = brief.loom;
    const corners = [seen.map(-w / 2, 0), seen.map(w / 2, 0), seen.map(w / 2, h), seen.map(-w / 2, h)];
    for (const [k, corner] of corners.entries()) {
      expect(corner.x + 0.5).toBeCloseTo(truth.corners_px[k]![0], 1);
      expect(corner.y + 0.5).toBeCloseTo(truth.corners_px[k]![1], 1);
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
});
