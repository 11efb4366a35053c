import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cameraOver } from '../../src/core/photo/cameraOver.ts';

const lens = { centreX: 750, centreY: 1000, halfDiagonal: 1250, k1: 0, k2: 0 };

describe('where the camera was', () => {
  it('is told from the plane’s picture, however the camera is turned', () => {
    const angle = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    const place = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(angle, angle, fc.double({ min: -3, max: 3, noNaN: true }), place, place, (tilt, turn, roll, x, y) => {
        const focal = 1500;
        const [ca, sa, cb, sb, cc, sc] = [tilt, turn, roll].flatMap((a) => [Math.cos(a), Math.sin(a)]) as [
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        // Rows of roll · tilt · turn, then a half turn so that the camera looks down on the plane.
        const ahead = [cb, 0, sb, sa * sb, ca, -sa * cb, -ca * sb, sa, ca * cb];
        const rolled = [0, 1, 2].flatMap((column) => [
          cc * ahead[column]! - sc * ahead[3 + column]!,
          sc * ahead[column]! + cc * ahead[3 + column]!,
          ahead[6 + column]!,
        ]);
        const r = (row: number, column: number) => (row === 0 ? 1 : -1) * rolled[column * 3 + row]!;
        const at = [x, y, 450];
        const t = [0, 1, 2].map((row) => -(r(row, 0) * at[0]! + r(row, 1) * at[1]! + r(row, 2) * at[2]!));
        const column = (p: readonly number[]) => [
          focal * p[0]! + lens.centreX * p[2]!,
          focal * p[1]! + lens.centreY * p[2]!,
          p[2]!,
        ];
        const columns = [[0, 1, 2].map((row) => r(row, 0)), [0, 1, 2].map((row) => r(row, 1)), t].map(column);
        // A homography has no size of its own.
        const homography = Float64Array.from({ length: 9 }, (_, k) => -0.37 * columns[k % 3]![Math.floor(k / 3)]!);
        const found = cameraOver({ homography, lens, focal });
        expect(Math.hypot(found.x - x, found.y - y, found.height - 450)).toBeLessThan(1e-6);
      }),
    );
  });
});
