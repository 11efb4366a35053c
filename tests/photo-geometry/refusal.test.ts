import { describe, expect, it } from 'vitest';
import { loadPhoto, loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { kinds, notALoom } from './notALoom.ts';

const fixtures = 'tests/fixtures';
const plans = ['dev01', 'dev03', 'dev04', 'dev10'].map((name) => loadPiece(`${fixtures}/photos/${name}.brief.json`));

describe('pictures without a loom', () => {
  for (const kind of kinds) {
    // One of each kind, every one against another plan; `npm run refusals` takes the many.
    it(`refuses ${kind}`, { timeout: 300_000 }, () => {
      const plan = plans[kinds.indexOf(kind) % plans.length]!;
      const located = locateLoom(notALoom(kind, 0), plan);
      expect(located.ok).toBe(false);
      if (!located.ok) expect(located.problem.remedy.length).toBeGreaterThan(10);
    });
  }

  it('refuses the real chessboards', { timeout: 300_000 }, async () => {
    for (const name of ['left01', 'left04']) {
      const photo = await loadPhoto(`${fixtures}/real/chessboards/${name}.jpg`);
      // Doubled in size, so that smallness is not what refuses them.
      const large = new Uint8Array(photo.rgb.length * 4);
      for (let y = 0; y < 2 * photo.height; y++) {
        for (let x = 0; x < 2 * photo.width; x++) {
          const from = ((y >> 1) * photo.width + (x >> 1)) * 3;
          large.set(photo.rgb.subarray(from, from + 3), (y * 2 * photo.width + x) * 3);
        }
      }
      const located = locateLoom({ width: 2 * photo.width, height: 2 * photo.height, rgb: large }, plans[0]!);
      expect(located.ok, name).toBe(false);
    }
  });

  it('says so when a picture is too small or too dark', () => {
    const tiny = locateLoom({ width: 300, height: 200, rgb: new Uint8Array(180_000).fill(120) }, plans[0]!);
    expect(!tiny.ok && tiny.problem.tag).toBe('too-small');
    const black = locateLoom({ width: 800, height: 1000, rgb: new Uint8Array(2_400_000).fill(8) }, plans[0]!);
    expect(!black.ok && black.problem.tag).toBe('too-dark');
  });
});
