import { type Outline, outlinesOf } from '../../core/cartoon/outline.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Chart } from '../../core/model/plan.ts';
import { MM_PER_INCH } from '../../core/model/units.ts';
import { leafOutline } from '../../core/ornaments/feltedLeaf.ts';
import { flowerOutline, wrappedFlower } from '../../core/ornaments/wrappedFlower.ts';
import { areaLabels } from '../../core/report/areaLabels.ts';
import { type ChartEdge, chartOutlines } from '../../core/report/chartOutlines.ts';
import { yarnLetter } from '../../core/report/yarnLetter.ts';
import { palette } from './palette.ts';
import { type Pen, POINTS_PER_MM } from './pen.ts';

/** Room round the cloth for rulers and numbers, mm. */
export const cartoonMargins = { left: 15, right: 15, bottom: 10, top: 8 };

const numbered = (end: number, ends: number): boolean =>
  end === 0 || end === ends - 1 || (end + 1) % 5 === 0 || 2 * end === ends - 1;

/** Numbers of the ends, upright and small, with their middle on each end. */
export function drawEndNumbers(pen: Pen, chart: Chart, y: number, size: number): void {
  const left = (-chart.ends * chart.pitch) / 2;
  for (let end = 0; end < chart.ends; end++) {
    if (!numbered(end, chart.ends)) continue;
    // A number beside the last or the middle one would run into it.
    const near = [chart.ends - 1, (chart.ends - 1) / 2].some(
      (other) => other !== end && Math.abs(other - end) < 2 && (end + 1) % 5 === 0,
    );
    if (near && chart.pitch < 8) continue;
    const middle = 2 * end === chart.ends - 1;
    pen.text(String(end + 1), left + (end + 0.5) * chart.pitch, y, {
      size,
      align: 'middle',
      face: middle ? 'strong' : 'plain',
      colour: palette.second,
    });
  }
}

/** Ends as hairlines with ticks, turns as ticks at both selvedges and a hairline at every tenth. */
function drawRulers(pen: Pen, chart: Chart, units: Piece['units']): void {
  const half = (chart.ends * chart.pitch) / 2;
  const top = chart.passes * chart.passHeight;
  for (let end = 0; end <= chart.ends; end++) {
    const x = -half + end * chart.pitch;
    pen.line(x, 0, x, top, { colour: palette.rule, width: 0.1 });
  }
  for (let end = 0; end < chart.ends; end++) {
    const x = -half + (end + 0.5) * chart.pitch;
    const length = numbered(end, chart.ends) ? 3 : 1.6;
    pen.line(x, -length, x, 0, { colour: palette.edge, width: 0.2 });
    pen.line(x, top, x, top + length, { colour: palette.edge, width: 0.2 });
  }
  drawEndNumbers(pen, chart, -6.4, 7.5);
  const turn = 2 * chart.passHeight;
  const turns = Math.floor(chart.passes / 2);
  for (let at = 0; at <= turns; at++) {
    const y = at * turn;
    const length = at % 10 === 0 ? 5 : at % 5 === 0 ? 3.4 : turn < 1 ? 0 : 1.8;
    pen.line(half, y, half + length, y, { colour: palette.edge, width: 0.2 });
    if (at % 10 !== 0) continue;
    pen.line(-half, y, half, y, { colour: palette.rule, width: 0.15 });
    pen.text(String(at), half + 6, y - 0.9, { size: 7.5, colour: palette.second });
  }
  pen.text('turns', half + 6, top + 2.2, { size: 7, colour: palette.second });
  // The weaver's own measure at the left: millimetres with a number at every centimetre, or inches and quarters.
  const inches = units === 'in';
  const step = inches ? MM_PER_INCH / 4 : 5;
  const [small, middle, large] = inches ? [1, 2, 4] : [1, 2, 10];
  for (let at = 0; at * step <= top + 1e-6; at++) {
    const y = at * step;
    const length = at % large === 0 ? 5 : at % middle === 0 ? 3.4 : at % small === 0 ? 1.8 : 0;
    pen.line(-half - length, y, -half, y, { colour: palette.edge, width: 0.2 });
    if (at % (inches ? large : middle) !== 0) continue;
    const words = inches ? String(at / large) : String(y);
    pen.text(words, -half - 6, y - 0.9, { size: 7.5, align: 'right', colour: palette.second });
  }
  pen.text(inches ? 'inches' : 'mm', -half - 6, top + 2.2, { size: 7, align: 'right', colour: palette.second });
}

/** What of the cloth a page shows, mm in the cloth frame. */
export interface ShownPart {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A letter in every area of the part shown, so that no page is without them. */
function drawLetters(pen: Pen, chart: Chart, shown: ShownPart): void {
  const half = (chart.ends * chart.pitch) / 2;
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const cells = {
    fromEnd: within(Math.ceil((shown.left + half) / chart.pitch), chart.ends),
    toEnd: within(Math.floor((shown.right + half) / chart.pitch), chart.ends),
    fromPass: within(Math.ceil(shown.bottom / chart.passHeight), chart.passes),
    toPass: within(Math.floor(shown.top / chart.passHeight), chart.passes),
  };
  for (const label of areaLabels(chart, (cell) => chart.cells[cell]!, cells)) {
    if (label.room < 1.6) continue;
    const size = Math.min(26, label.room * 2.4);
    const x = -half + (label.end + 0.5) * chart.pitch;
    const y = (label.pass + 0.5) * chart.passHeight;
    pen.text(yarnLetter(label.value), x, y - (0.35 * size) / POINTS_PER_MM, { face: 'strong', size, align: 'middle' });
  }
}

/** What every page of a cartoon draws, worked out once. */
export interface CartoonParts {
  readonly piece: Piece;
  readonly chart: Chart;
  readonly edges: readonly ChartEdge[];
  readonly outlines: readonly Outline[];
}

export function cartoonParts(piece: Piece, chart: Chart): CartoonParts {
  const half = (chart.ends * chart.pitch) / 2;
  const cloth = { left: -half, right: half, bottom: 0, top: chart.passes * chart.passHeight };
  return {
    piece,
    chart,
    edges: chartOutlines(chart, (cell) => chart.cells[cell]!),
    outlines: piece.shapes.filter((shape) => !shape.hidden).flatMap((shape) => outlinesOf(shape, cloth)),
  };
}

/** The cartoon in the cloth frame, true to size. @param shown where this page's letters may stand. */
export function drawCartoon(pen: Pen, parts: CartoonParts, shown: ShownPart): void {
  const { piece, chart, edges, outlines } = parts;
  const half = (chart.ends * chart.pitch) / 2;
  const top = chart.passes * chart.passHeight;
  drawRulers(pen, chart, piece.units);
  for (const edge of edges) {
    pen.line(
      -half + edge.fromEnd * chart.pitch,
      edge.fromPass * chart.passHeight,
      -half + edge.toEnd * chart.pitch,
      edge.toPass * chart.passHeight,
      { width: 0.35 },
    );
  }
  // The drawn lines, kept to the cloth: what lies past it is never woven.
  pen.inFrame(-half, 0, 2 * half, top, -half, 0, () => {
    for (const outline of outlines) {
      pen.path(outline.rings, true, null, { colour: palette.plan, width: 0.5, dash: [2.4, 1.5] });
    }
  });
  pen.box(-half, 0, 2 * half, top, null, { width: 0.5 });
  drawLetters(pen, chart, shown);
  for (const ornament of piece.ornaments) {
    const { x, y } = ornament.at;
    const outline =
      ornament.kind === 'felted-leaf' ? leafOutline(ornament) : flowerOutline(ornament, wrappedFlower(piece, ornament));
    pen.path([outline.flatMap((point) => [point.x, point.y])], true, null, { width: 0.3 });
    pen.circle(x, y, 2.4, palette.white, { width: 0.3 });
    pen.line(x - 4, y, x + 4, y, { width: 0.2 });
    pen.line(x, y - 4, x, y + 4, { width: 0.2 });
    pen.text(ornament.name, x + 4.5, y + 1, { size: 8, own: true });
  }
}
