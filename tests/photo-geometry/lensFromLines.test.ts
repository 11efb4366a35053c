import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { distort, lensOf } from '../../src/core/photo/camera.ts';
import { type LinePoints, lensFromLines } from '../../src/core/photo/lensFromLines.ts';

interface Board {
  width: number;
  height: number;
  columns: number;
  rows: number;
  corners: [number, number][];
}
const here = new URL('.', import.meta.url);
const boards: Record<string, Board> = JSON.parse(readFileSync(new URL('chessboardCorners.json', here), 'utf8'));
const calibration = readFileSync(new URL('../fixtures/real/chessboards/left_intrinsics.yml', here), 'utf8');

function linesOf(board: Board): LinePoints[] {
  const at = (row: number, column: number) => {
    const [x, y] = board.corners[row * board.columns + column]!;
    return { x, y };
  };
  const rows = Array.from({ length: board.rows }, (_, r) => Array.from({ length: board.columns }, (_, c) => at(r, c)));
  const columns = Array.from({ length: board.columns }, (_, c) =>
    Array.from({ length: board.rows }, (_, r) => at(r, c)),
  );
  return [...rows, ...columns];
}

// Corners by OpenCV's detector (scripts/photo/chessboardCorners.py); calibration published with the pictures.
describe('lens from straight lines', () => {
  const size = { width: 640, height: 480 };
  const all = Object.values(boards).flatMap(linesOf);
  const reading = lensFromLines(all, size)!;
  const figures = (name: string) =>
    calibration
      .slice(calibration.indexOf(name))
      .match(/data: \[([^\]]+)\]/)![1]!
      .split(',')
      .map(Number);

  it('straightens the boards to 0.3 px', () => {
    expect(Object.keys(boards)).toHaveLength(5);
    expect(reading.bentPx).toBeGreaterThan(2 * reading.straightPx);
    expect(reading.straightPx).toBeLessThan(0.3);
  });

  it('agrees with the published calibration in sign and size', () => {
    const focal = figures('camera_matrix')[0]!;
    const [k1] = figures('distortion_coefficients');
    // The published term counts radii in focal lengths, ours in half-diagonals.
    const published = k1! * (400 / focal) ** 2;
    expect(reading.lens.k1).toBeLessThan(0);
    expect(reading.lens.k1 / published).toBeGreaterThan(0.8);
    expect(reading.lens.k1 / published).toBeLessThan(1.2);
  });

  it('gives back a lens put into straight lines, and refuses terms the data do not hold', () => {
    const straight = Array.from({ length: 12 }, (_, k) =>
      Array.from({ length: 30 }, (_, j) => ({ x: 20 + 20 * j, y: 20 + 40 * k + 0.7 * j })),
    );
    const lens = lensOf({ k1: 0.04, k2: 0 }, size);
    const wobble = (k: number) => 0.05 * Math.sin(78.233 * k * k);
    const bent = straight.map((line, i) =>
      line.map((point, j) => {
        const seen = distort(lens, point.x, point.y);
        return { x: seen.x, y: seen.y + wobble(i * 30 + j) };
      }),
    );
    const found = lensFromLines(bent, size)!;
    expect(found.terms).toBe(1);
    expect(Math.abs(found.lens.k1 - 0.04)).toBeLessThan(0.001);
    const plain = straight.map((line, i) => line.map((point, j) => ({ ...point, y: point.y + wobble(i * 30 + j) })));
    expect(lensFromLines(plain, size)!.terms).toBe(0);
  });
});
