import type { EdgeDeviation } from '../../core/report/edgeDeviations.ts';
import { ink, palette } from './palette.ts';
import type { Pen } from './pen.ts';

export interface StripFrame {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  /** Height of cloth the strip shows, mm. */
  readonly shows: number;
  /** mm either side of plan. */
  readonly reach: number;
}

/**
 * One edge against plan, by height: the plan hangs plumb and dashed in the middle, the weaver's allowance is shaded,
 * the cloth is solid with its give or take as a band. What was not seen is a gap.
 * @param outward which way is out on paper: left for the left edge.
 */
export function drawEdgeStrip(
  pen: Pen,
  frame: StripFrame,
  title: string,
  rows: readonly EdgeDeviation[],
  allowance: number,
  outward: 'left' | 'right',
): void {
  const middle = frame.left + frame.width / 2;
  const scale = frame.width / 2 / frame.reach;
  const way = outward === 'left' ? -1 : 1;
  const x = (mm: number) => middle + way * Math.min(frame.reach, Math.max(-frame.reach, mm)) * scale;
  const y = (mm: number) => frame.bottom + (mm / frame.shows) * frame.height;
  pen.box(frame.left, frame.bottom, frame.width, frame.height, palette.sheet, { colour: palette.rule, width: 0.3 });
  pen.box(middle - allowance * scale, frame.bottom, 2 * allowance * scale, frame.height, palette.allowance);

  let stretch: EdgeDeviation[] = [];
  const flush = () => {
    const seen = stretch.flatMap((row) => (row.deviation === null ? [] : [{ y: row.y, ...row.deviation }]));
    if (seen.length > 0) {
      const band = [
        ...seen.flatMap((row) => [x(row.value - row.sigma), y(row.y)]),
        ...[...seen].reverse().flatMap((row) => [x(row.value + row.sigma), y(row.y)]),
      ];
      if (seen.length > 1) pen.path([band], true, ink('#f0c48e'), null);
      pen.path([seen.flatMap((row) => [x(row.value), y(row.y)])], false, null, { colour: palette.cloth, width: 0.6 });
      if (seen.length === 1) pen.circle(x(seen[0]!.value), y(seen[0]!.y), 0.7, palette.cloth);
    }
    stretch = [];
  };
  for (const row of rows) {
    if (row.deviation === null) flush();
    else stretch.push(row);
  }
  flush();
  pen.line(middle, frame.bottom, middle, frame.bottom + frame.height, {
    colour: palette.plan,
    width: 0.5,
    dash: [1.8, 1.2],
  });
  // The bob under the planned line.
  pen.path(
    [[middle - 1.1, frame.bottom - 1.4, middle + 1.1, frame.bottom - 1.4, middle, frame.bottom - 4.2]],
    true,
    palette.plan,
    null,
  );
  pen.text(title, middle, frame.bottom + frame.height + 2, { face: 'strong', size: 9, align: 'middle' });
  const [far, near] = outward === 'left' ? ['outwards', 'inwards'] : ['inwards', 'outwards'];
  pen.text(far, frame.left, frame.bottom - 4, { size: 7, colour: palette.second });
  pen.text(near, frame.left + frame.width, frame.bottom - 4, { size: 7, colour: palette.second, align: 'right' });
}
