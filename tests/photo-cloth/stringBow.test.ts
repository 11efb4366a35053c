import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stringBow } from '../../src/core/photo/stringBow.ts';
import { SeededRandom } from '../virtual-weaver/seededRandom.ts';

const FELL = 120;
const TOP = 300;

interface Shape {
  readonly bow: number;
  readonly lean?: number;
  readonly noise?: number;
  readonly from?: number;
  readonly to?: number;
  readonly seed?: number;
}

/** Looks at a string that hangs between fell and bar as half a wave, 1.5 mm apart, each with its own error. */
function looks({ bow, lean = 0, noise = 0.06, from = 0, to = 1, seed = 1 }: Shape) {
  const random = new SeededRandom(seed);
  const found: { x: number; y: number; sigma: number }[] = [];
  for (let y = FELL - 20; y < TOP - 2; y += 1.5) {
    const share = (y - FELL) / (TOP - FELL);
    if (share > 0 && (share < from || share > to)) continue;
    // Below the fell the track may go on over the cloth, anywhere.
    const x = share < 0 ? 40 : 50 + lean * share + bow * Math.sin(Math.PI * share);
    const error = (random.unit() + random.unit() + random.unit() - 1.5) * 2 * noise;
    found.push({ y, x: x + error, sigma: noise });
  }
  return found;
}

describe('the bow of a bare string', () => {
  it('is read within its give or take, however the string leans', () => {
    let within = 0;
    let all = 0;
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.integer({ min: 1, max: 1e6 }),
        (bow, lean, seed) => {
          const read = stringBow(looks({ bow, lean, seed }), FELL, TOP)!;
          const off = Math.abs(read.bow.value - bow) / read.bow.sigma;
          all++;
          if (off <= 2) within++;
          expect(off).toBeLessThan(4);
          expect(read.atFell).toBeCloseTo(50, 0);
          expect(read.atBar).toBeCloseTo(50 + lean, 0);
        },
      ),
    );
    expect(within / all).toBeGreaterThan(0.9);
  });

  it('is not feigned by a straight string', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { bow } = stringBow(looks({ bow: 0, lean: 3, seed }), FELL, TOP)!;
      expect(Math.abs(bow.value)).toBeLessThan(0.2);
    }
  });

  it('is not moved by a stretch where something else was followed', () => {
    const misled = looks({ bow: 1.5 }).map((look) =>
      look.y > 200 && look.y < 215 ? { ...look, x: look.x + 2 } : look,
    );
    expect(stringBow(misled, FELL, TOP)!.bow.value).toBeCloseTo(1.5, 0);
  });

  it('is not told of a string that was followed over too little of its length, or along two courses', () => {
    expect(stringBow(looks({ bow: 1.5, from: 0.5 }), FELL, TOP)).toBeNull();
    expect(stringBow(looks({ bow: 1.5, to: 0.6 }), FELL, TOP)).toBeNull();
    expect(stringBow(looks({ bow: 0 }), TOP - 20, TOP)).toBeNull();
    const jumped = looks({ bow: 0 }).map((look) => (look.y > 200 ? { ...look, x: look.x + 3 } : look));
    expect(stringBow(jumped, FELL, TOP)).toBeNull();
  });

  it('is surer of a string seen whole than of one that is hidden half the way', () => {
    const whole = stringBow(looks({ bow: 0 }), FELL, TOP)!.bow.sigma;
    expect(stringBow(looks({ bow: 0, from: 0.3, to: 0.85, noise: 0.2 }), FELL, TOP)!.bow.sigma).toBeGreaterThan(whole);
  });
});
