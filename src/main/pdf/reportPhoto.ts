import type { PDFImage } from 'pdf-lib';
import { outlinesOf } from '../../core/cartoon/outline.ts';
import type { LoomReading } from '../../core/model/check.ts';
import type { Piece } from '../../core/model/piece.ts';
import { clothOnPhoto } from '../../core/report/clothOnPhoto.ts';
import { stringCourse } from '../../core/report/stringCourse.ts';
import type { PlannedSelvedges } from '../../core/warp/plannedSelvedges.ts';
import { ink, palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** Lines on a photograph, outermost first: legible on any yarn, in greyscale too. */
const onPlan = [
  { colour: palette.white, width: 1 },
  { colour: palette.plan, width: 0.6, dash: [2, 1.2] },
];
const onCloth = [
  { colour: ink('#140d02'), width: 1.3 },
  { colour: ink('#ffb03a'), width: 0.6 },
];

/** Points along a straight line of the cloth, close enough that the lens's bend shows. */
function along(x0: number, y0: number, x1: number, y1: number): [number, number][] {
  const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 5));
  return Array.from({ length: steps + 1 }, (_, at) => [x0 + ((x1 - x0) * at) / steps, y0 + ((y1 - y0) * at) / steps]);
}

/** The part of the picture to show, as shares of its width and height from the top left. */
interface Crop {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The loom and a little round it, when the photograph is tied to millimetres; else the whole picture. */
export function cropToLoom(piece: Piece, reading: LoomReading): Crop {
  const whole = { left: 0, top: 0, width: 1, height: 1 };
  const { reference } = reading;
  if (reference === null) return whole;
  const onPhoto = clothOnPhoto(piece, reference);
  const { loom, warp, cloth } = piece;
  const middle = (warp.firstNotch + (warp.ends - 1) / 2 - (loom.notches - 1) / 2) * loom.notchPitch;
  const half = loom.openingWidth / 2 + loom.bar * 1.3;
  const [low, high] = [-loom.bar * 1.3, loom.openingHeight + loom.bar * 1.3].map((y) => y - cloth.baseAboveBottomBar);
  const corners = [-half, half].flatMap((x) => [onPhoto(x - middle, low!), onPhoto(x - middle, high!)]);
  if (!corners.every((corner) => Number.isFinite(corner.x) && Number.isFinite(corner.y))) return whole;
  const share = (value: number, size: number) => Math.min(1, Math.max(0, value / size));
  const xs = corners.map((corner) => share(corner.x, reference.photoWidth));
  const ys = corners.map((corner) => share(corner.y, reference.photoHeight));
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return width > 0.1 && height > 0.1 ? { left, top, width, height } : whole;
}

/**
 * The photograph with the plan and what was measured drawn over it, and a number at every flag. Lower left corner at
 * (left, bottom); the picture keeps its proportions and shows the loom when it is known where that is.
 * @param image as displayed: its pixels are turned already.
 */
export function drawReportPhoto(
  pen: Pen,
  piece: Piece,
  reading: LoomReading,
  planned: PlannedSelvedges,
  image: PDFImage,
  left: number,
  bottom: number,
  width: number,
): void {
  const crop = cropToLoom(piece, reading);
  const fullWidth = width / crop.width;
  const fullHeight = (fullWidth * image.height) / image.width;
  const height = fullHeight * crop.height;
  const imageLeft = left - crop.left * fullWidth;
  const imageTop = bottom + height + crop.top * fullHeight;
  pen.inFrame(left, bottom, width, height, left, bottom, () => {
    pen.image(image, imageLeft, imageTop - fullHeight, fullWidth, fullHeight);
    if (reading.reference === null) return;
    const onPhoto = clothOnPhoto(piece, reading.reference);
    const perPx = fullWidth / reading.reference.photoWidth;
    const place = (x: number, y: number): [number, number] => {
      const at = onPhoto(x, y);
      return [imageLeft + at.x * perPx, imageTop - at.y * perPx];
    };
    const draw = (points: readonly (readonly [number, number])[], closed: boolean, lines: typeof onPlan) => {
      const ring = points.flatMap(([x, y]) => place(x, y));
      for (const line of lines) pen.path([ring], closed, null, line);
    };
    const top = piece.cloth.height;
    const cloth = { left: planned.left, right: planned.right, bottom: 0, top };
    for (const x of [planned.left, planned.right]) draw(along(x, 0, x, top), false, onPlan);
    draw(along(planned.left, top, planned.right, top), false, onPlan);
    for (const shape of piece.shapes) {
      if (shape.hidden) continue;
      for (const outline of outlinesOf(shape, cloth)) {
        for (const ring of outline.rings) {
          const points: [number, number][] = [];
          for (let at = 0; at < ring.length; at += 2) {
            const next = (at + 2) % ring.length;
            points.push(...along(ring[at]!, ring[at + 1]!, ring[next]!, ring[next + 1]!).slice(0, -1));
          }
          draw(points, true, onPlan);
        }
      }
    }
    const topY = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
    const flagged = new Set(reading.flags.flatMap(({ ends }) => ends));
    for (const end of reading.ends.filter(({ index }) => flagged.has(index))) {
      const course = stringCourse(end, reading.ends, topY);
      if (course.length > 0)
        draw(
          course.map(({ x, y }) => [x, y] as const),
          false,
          onCloth,
        );
    }
    for (const side of ['left', 'right'] as const) {
      const rows = [...reading.selvedge].sort((one, other) => one.y - other.y);
      for (const run of seenRuns(rows, (row) => row[side] !== null)) {
        draw(
          run.map((row) => [row[side]!.value, row.y] as const),
          false,
          onCloth,
        );
      }
    }
    for (const run of seenRuns(reading.ends, (end) => end.fell !== null && end.xAtFell !== null)) {
      draw(
        run.map((end) => [end.xAtFell!.value, end.fell!.value] as const),
        false,
        onCloth,
      );
    }
    const fells = reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell.value]));
    const fellTop = fells.length === 0 ? 0 : fells.reduce((sum, one) => sum + one, 0) / fells.length;
    // Flags at like places would hide one another: each later one is set a little higher.
    const taken: [number, number][] = [];
    for (const [index, flag] of reading.flags.entries()) {
      const beside = flag.side === 'left' ? planned.left - 12 : flag.side === 'right' ? planned.right + 12 : 0;
      const x = flag.xMm ?? beside;
      let [px, py] = place(x, flag.yMm ?? fellTop);
      while (taken.some(([tx, ty]) => Math.hypot(tx - px, ty - py) < 6.4)) py += 6.6;
      taken.push([px, py]);
      pen.circle(px, py, 3, palette.ink, { colour: palette.white, width: 0.5 });
      pen.text(String(index + 1), px, py - 1.25, { face: 'strong', size: 10, align: 'middle', colour: palette.white });
    }
  });
  pen.box(left, bottom, width, height, null, { width: 0.3 });
}

/** Stretches of neighbouring items that were seen: a gap is never bridged. */
function seenRuns<Item>(items: readonly Item[], seen: (item: Item) => boolean): Item[][] {
  const runs: Item[][] = [[]];
  for (const item of items) {
    if (seen(item)) runs.at(-1)!.push(item);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}
