import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapeArea } from '../../src/core/cartoon/area.ts';
import { covers, outlinesOf } from '../../src/core/cartoon/outline.ts';
import { mergeSpecks } from '../../src/core/cartoon/trace/mergeSpecks.ts';
import { spotRings } from '../../src/core/cartoon/trace/spotRings.ts';
import { connectedSpots } from '../../src/core/cartoon/trace/spots.ts';
import { tracePicture } from '../../src/core/cartoon/trace/tracePicture.ts';
import { inYarns, type Picture } from '../../src/core/cartoon/trace/yarnRaster.ts';
import { seededChance } from './hostileDrawings.ts';

const yarns = [
  { id: 'ink', name: 'Ink', colour: '#2b3150' },
  { id: 'cream', name: 'Cream', colour: '#efe6d8' },
  { id: 'gold', name: 'Ochre', colour: '#c9952e' },
];
const rgbOf = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
const picture = (width: number, height: number, colour: (x: number, y: number) => string): Picture => {
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rgb.set(rgbOf(colour(x, y)), 3 * (y * width + x));
  return { width, height, rgb };
};
const cloth = { left: -100, right: 100, bottom: 0, top: 200 };
const into = { box: cloth, yarns, ground: 'ink', smallest: 20, tolerance: 0.5, idPrefix: 't' };

describe('tracing', () => {
  it('takes every colour for the yarn that looks nearest', () => {
    const { yarns: seen } = inYarns(
      picture(3, 1, (x) => ['#1c2340', '#fffaf0', '#d8a030'][x]!),
      yarns,
    );
    expect([...seen]).toEqual([0, 1, 2]);
  });

  it('walks rings that fill exactly their pixels', () => {
    const size = fc.integer({ min: 1, max: 7 });
    fc.assert(
      fc.property(
        size,
        size,
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 49, maxLength: 49 }),
        (w, h, values) => {
          const spots = connectedSpots(Uint8Array.from(values.slice(0, w * h)), w, h);
          const rings = spotRings(spots);
          for (let spot = 0; spot < spots.sizes.length; spot++) {
            const own = rings.filter((ring) => ring.spot === spot);
            for (let y = 0; y < h; y++) {
              for (let x = 0; x < w; x++) {
                // Even-odd count of upright sides right of the pixel's middle.
                let crossed = 0;
                for (const { corners } of own) {
                  for (let at = 0; at < corners.length; at += 2) {
                    const next = (at + 2) % corners.length;
                    const low = Math.min(corners[at + 1]!, corners[next + 1]!);
                    if (corners[at] === corners[next] && corners[at]! > x && low === y) crossed++;
                  }
                }
                expect(crossed % 2 === 1).toBe(spots.of[y * w + x] === spot);
              }
            }
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('shares edges exactly: with every yarn traced, each place of the picture is in one shape', () => {
    const small = fc.integer({ min: 2, max: 9 });
    fc.assert(
      fc.property(
        small,
        small,
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 81, maxLength: 81 }),
        fc.integer(),
        (w, h, values, seed) => {
          const traced = tracePicture(
            picture(w, h, (x, y) => yarns[values[y * 9 + x]!]!.colour),
            { ...into, ground: null, smallest: 0, tolerance: (0.6 * 200) / Math.max(w, h) },
          );
          if (!traced.ok) throw new Error(traced.problem.tag);
          const outlines = traced.value.shapes.flatMap((shape) => outlinesOf(shape, cloth));
          const scale = Math.min(200 / w, 200 / h);
          const chance = seededChance(seed);
          for (let probe = 0; probe < 20; probe++) {
            // Well inside the rim, which simplifying may cut at the picture's corners.
            const x = (chance() - 0.5) * (w - 1.2) * scale;
            const y = 100 + (chance() - 0.5) * (h - 1.2) * scale;
            expect(outlines.filter((outline) => covers(outline, x, y))).toHaveLength(1);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('finds a disc with a hole, in millimetres, to within a pixel or so', () => {
    const traced = tracePicture(
      picture(200, 200, (x, y) => {
        const r = Math.hypot(x + 0.5 - 100, y + 0.5 - 100);
        return r < 30 ? '#2b3150' : r < 70 ? '#c9952e' : '#2b3150';
      }),
      into,
    );
    if (!traced.ok) throw new Error(traced.problem.tag);
    expect(traced.value.shapes.map((shape) => [shape.name, shape.yarn])).toEqual([['Ochre', 'gold']]);
    const area = shapeArea(traced.value.shapes[0]!, cloth);
    expect(area / (Math.PI * (70 ** 2 - 30 ** 2))).toBeGreaterThan(0.99);
    expect(area / (Math.PI * (70 ** 2 - 30 ** 2))).toBeLessThan(1.01);
    expect(covers(outlinesOf(traced.value.shapes[0]!, cloth)[0]!, 0, 100)).toBe(false);
    const form = traced.value.shapes[0]!.form;
    expect(form.kind === 'path' && form.commands.length).toBeLessThan(160);
  });

  it('gives specks to their neighbours, however noisy the picture', () => {
    const chance = seededChance(7);
    const noisy = picture(300, 300, (x) => (chance() < 0.06 ? '#efe6d8' : x < 150 ? '#2b3150' : '#c9952e'));
    const merged = mergeSpecks(inYarns(noisy, yarns), 40);
    expect(connectedSpots(merged.yarns, 300, 300).sizes).toHaveLength(2);
    const traced = tracePicture(noisy, into);
    expect(traced.ok && traced.value.shapes).toHaveLength(1);
  });

  it('keeps to a number of areas a weaver can look through', () => {
    const chance = seededChance(3);
    const start = process.cpuUsage();
    const traced = tracePicture(
      picture(500, 500, () => yarns[Math.floor(chance() * 3)]!.colour),
      { ...into, smallest: 0 },
    );
    expect(process.cpuUsage(start).user / 1e6).toBeLessThan(20);
    if (traced.ok) {
      expect(traced.value.shapes.length).toBeLessThanOrEqual(300);
      expect(traced.value.told.length).toBe(1);
    } else expect(traced.problem.tag).toBe('picture-plain');
  });

  it('says what is wrong with a picture it cannot use', () => {
    const tag = (one: Picture) => {
      const traced = tracePicture(one, into);
      return traced.ok ? 'traced' : traced.problem.tag;
    };
    expect(tag({ width: 0, height: 0, rgb: new Uint8Array(0) })).toBe('picture-unusable');
    expect(tag({ width: 4, height: 4, rgb: new Uint8Array(5) })).toBe('picture-unusable');
    expect(tag({ width: 3000, height: 3000, rgb: new Uint8Array(27_000_000) })).toBe('picture-too-large');
    expect(tag(picture(20, 20, () => '#2b3150'))).toBe('picture-plain');
  });
});
