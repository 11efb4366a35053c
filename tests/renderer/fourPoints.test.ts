import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitOf } from '../../src/renderer/screens/check/fourPoints.ts';

/** Bottom left, bottom right, top right, top left of an upright opening, y down. */
const upright = [
  { x: 100, y: 900 },
  { x: 760, y: 900 },
  { x: 760, y: 100 },
  { x: 100, y: 100 },
];
const swap = (one: number, other: number) =>
  upright.map((point, at) => (at === one ? upright[other]! : at === other ? upright[one]! : point));

describe('four marked corners', () => {
  it('fit a loom of their own proportions', () => {
    expect(fitOf(upright, 330, 400)).toEqual({ kind: 'fits' });
  });

  it('fit whichever way the photograph lies', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (angle) => {
        const turned = upright.map(({ x, y }) => ({
          x: x * Math.cos(angle) - y * Math.sin(angle),
          y: x * Math.sin(angle) + y * Math.cos(angle),
        }));
        expect(fitOf(turned, 330, 400)).toEqual({ kind: 'fits' });
      }),
    );
  });

  it('are mirrored when they go round the other way', () => {
    const mirrored = upright.map(({ x, y }) => ({ x: -x, y }));
    expect(fitOf(mirrored, 330, 400)).toEqual({ kind: 'mirrored' });
  });

  it('are crossed when two are swapped', () => {
    expect(fitOf(swap(0, 1), 330, 400).kind).toBe('crossed');
    expect(fitOf(swap(1, 2), 330, 400).kind).toBe('crossed');
  });

  it('are doubtful by the share their proportions differ', () => {
    const fit = fitOf(upright, 330, 330);
    expect(fit.kind).toBe('doubtful');
    expect(fit.kind === 'doubtful' && fit.tooWide).toBeCloseTo(660 / 800 - 1, 6);
  });
});
