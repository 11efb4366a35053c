import { expect, test } from 'vitest';
import { type ColourEdges, NO_EDGE } from '../../src/core/photo/colourEdges.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import { frameLines } from '../../src/core/photo/frameLines.ts';
import { frameQuads } from '../../src/core/photo/frameQuads.ts';
import { plannedFrames } from '../../src/core/photo/linesAsFrame.ts';

const expected: Expected = {
  pitch: 8,
  notches: 51,
  openingWidth: 408,
  openingHeight: 490,
  bar: 28,
  rail: 28,
  depth: 14,
  ends: 30,
  firstNotch: 8,
  stringDiameter: 2,
  stringsPerEnd: 1,
  base: 50,
};
const [WIDTH, HEIGHT, SCALE] = [375, 500, 0.62];

type Line = readonly [x1: number, y1: number, x2: number, y2: number];

/** Lines, in mm from the frame's middle, as thin edges. */
function drawn(lines: readonly Line[]): ColourEdges {
  const direction = new Uint8Array(WIDTH * HEIGHT).fill(NO_EDGE);
  for (const [x1, y1, x2, y2] of lines) {
    const along = Math.round((Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI + 360) % 180;
    const steps = Math.ceil(2 * SCALE * Math.hypot(x2 - x1, y2 - y1));
    for (let k = 0; k <= steps; k++) {
      const column = Math.round(WIDTH / 2 + SCALE * (x1 + (k / steps) * (x2 - x1)));
      const row = Math.round(HEIGHT / 2 + SCALE * (y1 + (k / steps) * (y2 - y1)));
      if (column >= 0 && row >= 0 && column < WIDTH && row < HEIGHT) direction[row * WIDTH + column] = along;
    }
  }
  return { width: WIDTH, height: HEIGHT, direction, strength: new Float32Array(WIDTH * HEIGHT).fill(20) };
}

/** The four edges of an upright frame, so far out; the right one as far aside. */
function rim(out: number, rightAside = 0): Line[] {
  const [x, y] = [expected.openingWidth / 2 + out, expected.openingHeight / 2 + out];
  return [
    [-x, -y, x, -y],
    [-x, y, x, y],
    [-x, -y, -x, y],
    [x + rightAside, -y, x + rightAside, y],
  ];
}

test('two stripes of the table beside a rail whose inner edge is hidden aren’t the rail', () => {
  const stripes = 36;
  const bars = [...rim(0), ...rim(expected.bar)];
  const hidden = bars.filter(([x1, , x2]) => !(x1 === x2 && x1 === expected.openingWidth / 2));
  const beside = [0, expected.bar].map((out): Line => rim(out, stripes)[3]!);
  const edges = drawn([...hidden, ...beside]);
  const [best] = frameQuads(edges, plannedFrames(frameLines(edges), edges, expected), 0.83 * HEIGHT, () => 0, 5);
  const right = Math.max(...best!.corners.map(({ x }) => x));
  expect(Math.abs((right - WIDTH / 2) / SCALE - expected.openingWidth / 2)).toBeLessThan(4);
});
