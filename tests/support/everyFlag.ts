import { edgeCourse } from '../../src/core/compare/edgeCourse.ts';
import { edgeFlags } from '../../src/core/compare/edgeFlags.ts';
import { tiltFlags, unevenFlags } from '../../src/core/compare/fellFlags.ts';
import { motifFlags } from '../../src/core/compare/motifFlags.ts';
import { beatFlags, countFlags } from '../../src/core/compare/planFlags.ts';
import { spreadFlags } from '../../src/core/compare/spreadFlags.ts';
import { stringFlags } from '../../src/core/compare/stringFlags.ts';
import type { EndReading, Flag, LoomReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Piece } from '../../src/core/model/piece.ts';

/** Flags of every kind and both ways, as the core makes them of a reading that is spoilt in turn. */
export function everyFlag(reading: LoomReading, piece: Piece): readonly Flag[] {
  const courses = (['left', 'right'] as const).map((side) => edgeCourse(reading, piece, side));
  const widened = courses.map((course) => ({
    ...course,
    points: course.points.map((point) => ({ ...point, out: point.y / 20 })),
  }));
  // One slack to the left, one to the right, two together, two crossed, one in its neighbour's notch.
  const bows: Readonly<Record<number, number>> = { 3: -2.2, 6: 1.8, 12: 2.4, 13: 1.9 };
  const notches: Readonly<Record<number, number>> = { 8: 9, 9: 8, 16: 17 };
  const strayed = (end: EndReading): EndReading => ({
    ...end,
    bow: measurement(bows[end.index] ?? 0.02 * (end.index % 5), 0.1, 60, 'bare string'),
    runsTo: notches[end.index] ?? end.index,
    notchX: end.index === 16 ? null : end.notchX,
  });
  const pushed = reading.ends.map((end) => ({
    ...end,
    xAtFell: end.xAtFell && measurement(end.xAtFell.value + Math.max(0, end.index - 20) * 0.8, 0.2, 12, 'string'),
  }));
  const edge = { way: 'across', yarns: [0, 1], end: 8, pass: 60, length: 40, sigmaMm: 0.6 } as const;
  const halves = (differenceMm: number, turns: number) => ({ pairs: [], mean: { differenceMm, sigmaMm: 0.2, turns } });
  const beating = (pass: number) => ({ ...reading, pass: measurement(pass, 0.01, 40, 'floats') });
  return [
    ...edgeFlags(courses, 0.2),
    ...edgeFlags(widened, 2),
    ...spreadFlags(pushed, piece.loom.notchPitch, 2),
    ...tiltFlags({ riseMm: -4.2, sigmaMm: 0.3, y: 90 }, 2),
    ...tiltFlags({ riseMm: 4.2, sigmaMm: 0.3, y: 90 }, 2),
    ...unevenFlags(halves(4.3, 2), true, 2),
    ...unevenFlags(halves(-2.3, -1), true, 2),
    ...unevenFlags(halves(2.3, 0), true, 2),
    ...beatFlags(beating(1.31), piece),
    ...beatFlags(beating(0.81), piece),
    ...motifFlags([{ ...edge, side: 'left', off: 2, offMm: 12.7 }], piece),
    ...motifFlags([{ ...edge, side: 'right', off: -1, offMm: -6.4 }], piece),
    ...countFlags({ ...reading, endsCounted: piece.warp.ends - 1 }, piece),
    ...stringFlags({ ...reading, ends: reading.ends.map(strayed) }, piece),
  ];
}
