import { describe, expect, it } from 'vitest';
import { loadPhoto, loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';

const fixtures = 'tests/fixtures';
const plan = loadPiece(`${fixtures}/photos/dev01.brief.json`);

describe('pictures that show no loom well enough', () => {
  it('refuses a real chessboard that is large enough', { timeout: 300_000 }, async () => {
    const photo = await loadPhoto(`${fixtures}/real/chessboards/left04.jpg`);
    // Doubled in size, so that smallness is not what refuses it.
    const large = new Uint8Array(photo.rgb.length * 4);
    for (let y = 0; y < 2 * photo.height; y++) {
      for (let x = 0; x < 2 * photo.width; x++) {
        const from = ((y >> 1) * photo.width + (x >> 1)) * 3;
        large.set(photo.rgb.subarray(from, from + 3), (y * 2 * photo.width + x) * 3);
      }
    }
    const located = locateLoom({ width: 2 * photo.width, height: 2 * photo.height, rgb: large }, plan);
    expect(located.ok).toBe(false);
    if (!located.ok) expect(located.problem.remedy.length).toBeGreaterThan(10);
  });

  it('says so when a picture is too small or too dark', () => {
    const tiny = locateLoom({ width: 300, height: 200, rgb: new Uint8Array(180_000).fill(120) }, plan);
    expect(!tiny.ok && tiny.problem.code).toBe('too-small');
    const black = locateLoom({ width: 800, height: 1000, rgb: new Uint8Array(2_400_000).fill(8) }, plan);
    expect(!black.ok && black.problem.code).toBe('too-dark');
  });
});
