import type { PathCommand } from '../model/piece.ts';

/**
 * An arc of an ellipse as cubic curves, at most an eighth turn each, which stray from the ellipse by less than one
 * part in 200 000 of its radius (handle length 4/3 · tan(step / 4), the usual construction).
 * @param turn how the ellipse's own x axis is turned, radians anticlockwise with y up.
 * @param from first angle in the ellipse's own frame, radians.
 * @param sweep angle to go, radians; positive runs from the x axis to the y axis.
 * @returns curves that follow on from the arc's start, which the caller has already reached.
 */
export function arcCubics(
  centreX: number,
  centreY: number,
  radiusX: number,
  radiusY: number,
  turn: number,
  from: number,
  sweep: number,
): PathCommand[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 4) - 1e-9));
  const step = sweep / pieces;
  const handle = (4 / 3) * Math.tan(step / 4);
  const cosTurn = Math.cos(turn);
  const sinTurn = Math.sin(turn);
  const x = (u: number, v: number) => centreX + radiusX * u * cosTurn - radiusY * v * sinTurn;
  const y = (u: number, v: number) => centreY + radiusX * u * sinTurn + radiusY * v * cosTurn;
  const commands: PathCommand[] = [];
  for (let piece = 0; piece < pieces; piece++) {
    const start = from + piece * step;
    const end = piece === pieces - 1 ? from + sweep : start + step;
    const [c0, s0, c1, s1] = [Math.cos(start), Math.sin(start), Math.cos(end), Math.sin(end)];
    commands.push({
      to: 'cubic',
      x1: x(c0 - handle * s0, s0 + handle * c0),
      y1: y(c0 - handle * s0, s0 + handle * c0),
      x2: x(c1 + handle * s1, s1 - handle * c1),
      y2: y(c1 + handle * s1, s1 - handle * c1),
      x: x(c1, s1),
      y: y(c1, s1),
    });
  }
  return commands;
}
