import { describe, expect, it } from 'vitest';
import { layersOf } from '../../src/core/photo/layers.ts';

/** Rows of evidence from [count, value] runs, lowest first. */
const runs = (...parts: readonly (readonly [number, number])[]): Float32Array =>
  Float32Array.from(parts.flatMap(([count, value]) => new Array<number>(count).fill(value)));

const COVER = 40;

describe('layers of one end', () => {
  it('finds where cloth ends and bare string begins', () => {
    const layers = layersOf(runs([50, -2], [100, 2]), null, 0, 150, COVER);
    expect(layers.clothTop).toBe(50);
    expect(layers.bareFrom).toBe(50);
  });

  it('is not fooled by a short mark on the bare string, nor by a short bare-looking place in the cloth', () => {
    expect(layersOf(runs([50, -2], [40, 2], [6, -2], [60, 2]), null, 0, 156, COVER).clothTop).toBe(50);
    expect(layersOf(runs([30, -2], [6, 2], [20, -2], [100, 2]), null, 0, 156, COVER).clothTop).toBe(56);
  });

  it('sees a card lying over bare strings for what it is', () => {
    const evidence = runs([60, -2], [80, 2], [50, -2], [60, 2]);
    const foreign = runs([60, -2], [80, -2], [50, 2], [60, -2]);
    const layers = layersOf(evidence, foreign, 0, evidence.length, COVER);
    expect(layers.clothTop).toBe(60);
    expect(layers.bare[100]).toBe(1);
    expect(layers.bare[165]).toBe(0);
  });

  it('says where something over the fell hides it', () => {
    const evidence = runs([60, -2], [50, -2], [90, 2]);
    const foreign = runs([60, -2], [50, 2], [90, -2]);
    const layers = layersOf(evidence, foreign, 0, evidence.length, COVER);
    expect(layers.clothTop).toBe(60);
    expect(layers.bareFrom).toBe(110);
  });

  it('finds no cloth on a bare end', () => {
    expect(layersOf(runs([100, 2]), null, 0, 100, COVER).clothTop).toBe(0);
  });
});
