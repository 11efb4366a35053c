import type uPlot from 'uplot';
import type { TrendPoint } from './trends.ts';

interface TrendMarks {
  readonly plan: number;
  readonly allowance: number;
  readonly upright: boolean;
  readonly tick: (value: number) => string;
  readonly chosen: string | null;
  /** How far from the plan the ticks stand. */
  readonly step: number;
}

/** Room at the foot for the bob and the figure's own ticks, px. */
const FOOT = 26;

/** Allowance, plan with its bob, line, give-or-take bars and a diamond for each check, on the plot's own canvas. */
export function drawTrend(plot: uPlot, points: readonly TrendPoint[], marks: TrendMarks): void {
  const { ctx: pen, bbox } = plot;
  const ratio = window.devicePixelRatio;
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const rem = Number.parseFloat(style.fontSize) * ratio;
  const foot = marks.upright ? FOOT * ratio : 0;
  const along = (value: number) => {
    const at = plot.valToPos(value, 'x', true);
    // Heights share the box with the ticks below them.
    return marks.upright ? bbox.top + ((at - bbox.top) / bbox.height) * (bbox.height - foot) : at;
  };
  const across = (value: number) => plot.valToPos(value, 'y', true);
  const place = (u: number, v: number): [number, number] => (marks.upright ? [v, u] : [u, v]);
  const line = (from: [number, number], to: [number, number]) => {
    pen.beginPath();
    pen.moveTo(...from);
    pen.lineTo(...to);
    pen.stroke();
  };
  const start = marks.upright ? bbox.top : bbox.left;
  const end = marks.upright ? bbox.top + bbox.height - foot : bbox.left + bbox.width;
  pen.save();

  pen.fillStyle = colour('--allowance');
  const low = across(marks.plan - marks.allowance);
  const high = across(marks.plan + marks.allowance);
  if (marks.upright) pen.fillRect(Math.min(low, high), start, Math.abs(high - low), end - start);
  else pen.fillRect(start, Math.min(low, high), end - start, Math.abs(high - low));

  pen.strokeStyle = colour('--plan');
  pen.lineWidth = 2.4 * ratio;
  pen.setLineDash([9 * ratio, 5 * ratio]);
  line(place(start, across(marks.plan)), place(end, across(marks.plan)));
  pen.setLineDash([]);
  if (marks.upright) drawBob(pen, across(marks.plan), end, ratio, colour('--plan'));

  pen.strokeStyle = colour('--cloth');
  pen.lineWidth = 2.4 * ratio;
  pen.beginPath();
  points.forEach((point, index) => {
    const at = place(along(marks.upright ? point.height : point.time), across(point.measured.value));
    if (index === 0) pen.moveTo(...at);
    else pen.lineTo(...at);
  });
  pen.stroke();
  for (const point of points) {
    const u = along(marks.upright ? point.height : point.time);
    const near = across(point.measured.value - point.measured.sigma);
    const far = across(point.measured.value + point.measured.sigma);
    line(place(u, near), place(u, far));
    for (const v of [near, far]) line(place(u - 5 * ratio, v), place(u + 5 * ratio, v));
    const [x, y] = place(u, across(point.measured.value));
    const half = (point.check === marks.chosen ? 8.5 : 7) * ratio;
    pen.beginPath();
    pen.moveTo(x, y - half);
    pen.lineTo(x + half, y);
    pen.lineTo(x, y + half);
    pen.lineTo(x - half, y);
    pen.closePath();
    pen.fillStyle = point.check === marks.chosen ? colour('--cloth') : colour('--sheet');
    pen.fill();
    pen.stroke();
  }

  pen.fillStyle = colour('--ink-2');
  pen.font = `450 ${0.9375 * rem}px ${colour('--face')}`;
  if (marks.upright) {
    pen.textBaseline = 'bottom';
    for (const sign of [-1, 0, 1]) {
      const value = marks.plan + sign * marks.step;
      if (sign === 0) continue;
      pen.textAlign = 'center';
      const words = marks.tick(value);
      // Long fractions are pushed outwards, clear of the bob.
      const clear = pen.measureText(words).width / 2 + 10 * ratio;
      const away = Math.max(Math.abs(across(value) - across(marks.plan)), clear);
      pen.fillText(
        words,
        across(marks.plan) + Math.sign(across(value) - across(marks.plan)) * away,
        bbox.top + bbox.height,
      );
    }
  } else {
    pen.textBaseline = 'middle';
    pen.textAlign = 'right';
    for (const sign of [-1, 1]) {
      const value = marks.plan + sign * marks.step;
      pen.fillText(marks.tick(value), bbox.left - 8 * ratio, across(value));
    }
  }
  pen.restore();
}

function drawBob(pen: CanvasRenderingContext2D, x: number, y: number, ratio: number, fill: string): void {
  const scale = 0.75 * ratio;
  const point = (dx: number, dy: number): [number, number] => [x + dx * scale, y + dy * scale];
  pen.fillStyle = fill;
  pen.beginPath();
  pen.moveTo(...point(-2.5, 0));
  pen.lineTo(...point(2.5, 0));
  pen.lineTo(...point(2.5, 3));
  pen.lineTo(...point(4.7, 3));
  pen.lineTo(...point(7, 7.5));
  pen.bezierCurveTo(...point(6.2, 12), ...point(3, 16.5), ...point(0, 20.5));
  pen.bezierCurveTo(...point(-3, 16.5), ...point(-6.2, 12), ...point(-7, 7.5));
  pen.lineTo(...point(-4.7, 3));
  pen.lineTo(...point(-2.5, 3));
  pen.closePath();
  pen.fill();
}
