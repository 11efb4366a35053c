import { type SVGCommand, SVGPathData, SVGPathDataParser } from 'svg-pathdata';
import { arcCubics } from '../../geometry/arcCubics.ts';
import type { PathCommand } from '../../model/piece.ts';

/**
 * An arc given by its ends as curves, by the conversion in SVG 1.1 appendix F.6: radii too small are grown, a radius
 * of nothing is a straight line.
 */
function arc(
  fromX: number,
  fromY: number,
  radiusX: number,
  radiusY: number,
  turnDegrees: number,
  large: boolean,
  sweep: boolean,
  x: number,
  y: number,
): PathCommand[] {
  if (fromX === x && fromY === y) return [];
  let rx = Math.abs(radiusX);
  let ry = Math.abs(radiusY);
  if (rx < 1e-9 || ry < 1e-9) return [{ to: 'line', x, y }];
  const turn = ((turnDegrees % 360) * Math.PI) / 180;
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  const halfX = (fromX - x) / 2;
  const halfY = (fromY - y) / 2;
  const u = cosine * halfX + sine * halfY;
  const v = -sine * halfX + cosine * halfY;
  const reach = (u / rx) ** 2 + (v / ry) ** 2;
  if (reach > 1) {
    rx *= Math.sqrt(reach);
    ry *= Math.sqrt(reach);
  }
  const spare = Math.max(0, 1 / ((u / rx) ** 2 + (v / ry) ** 2) - 1);
  const root = Math.sqrt(spare) * (large === sweep ? -1 : 1);
  const cu = (root * rx * v) / ry;
  const cv = (-root * ry * u) / rx;
  const centreX = cosine * cu - sine * cv + (fromX + x) / 2;
  const centreY = sine * cu + cosine * cv + (fromY + y) / 2;
  const from = Math.atan2((v - cv) / ry, (u - cu) / rx);
  let angle = Math.atan2((-v - cv) / ry, (-u - cu) / rx) - from;
  if (sweep && angle < 0) angle += 2 * Math.PI;
  else if (!sweep && angle > 0) angle -= 2 * Math.PI;
  const curves = arcCubics(centreX, centreY, rx, ry, turn, from, angle);
  const last = curves.at(-1);
  // The arc ends exactly where it was told to.
  return last?.to === 'cubic' ? [...curves.slice(0, -1), { ...last, x, y }] : curves;
}

/** Path data as absolute commands, and whether it broke off: what comes before a mistake is kept, as SVG asks. */
export function pathCommandsOf(
  data: string,
  most: number,
): { readonly commands: PathCommand[]; readonly whole: boolean } {
  const written: SVGCommand[] = [];
  let whole = true;
  try {
    const parser = new SVGPathDataParser();
    parser.parse(data, written);
    parser.finish(written);
  } catch {
    // The parser throws at the first mistake; `written` holds everything before it.
    whole = false;
  }
  const commands: PathCommand[] = [];
  let x = 0;
  let y = 0;
  let startX = 0;
  let startY = 0;
  /** Last control point, for the smooth commands; null after any other kind of command. */
  let cubicHandle = null as { x: number; y: number } | null;
  let quadHandle = null as { x: number; y: number } | null;
  const addQuad = (qx: number, qy: number, toX: number, toY: number) => {
    commands.push({
      to: 'cubic',
      x1: x + ((qx - x) * 2) / 3,
      y1: y + ((qy - y) * 2) / 3,
      x2: toX + ((qx - toX) * 2) / 3,
      y2: toY + ((qy - toY) * 2) / 3,
      x: toX,
      y: toY,
    });
    quadHandle = { x: qx, y: qy };
  };
  for (const command of written) {
    if (commands.length > most) return { commands, whole: false };
    if (commands.length === 0 && command.type !== SVGPathData.MOVE_TO) return { commands, whole: false };
    if (command.type === SVGPathData.CLOSE_PATH) {
      commands.push({ to: 'close' });
      x = startX;
      y = startY;
      cubicHandle = null;
      quadHandle = null;
      continue;
    }
    const dx = command.relative ? x : 0;
    const dy = command.relative ? y : 0;
    const toX: number = 'x' in command ? command.x + dx : x;
    const toY: number = 'y' in command ? command.y + dy : y;
    const before: { cubic: typeof cubicHandle; quad: typeof quadHandle } = { cubic: cubicHandle, quad: quadHandle };
    cubicHandle = null;
    quadHandle = null;
    switch (command.type) {
      case SVGPathData.MOVE_TO:
        commands.push({ to: 'move', x: toX, y: toY });
        startX = toX;
        startY = toY;
        break;
      case SVGPathData.CURVE_TO:
      case SVGPathData.SMOOTH_CURVE_TO: {
        const smooth = command.type === SVGPathData.SMOOTH_CURVE_TO;
        const x1: number = smooth ? (before.cubic === null ? x : 2 * x - before.cubic.x) : command.x1 + dx;
        const y1: number = smooth ? (before.cubic === null ? y : 2 * y - before.cubic.y) : command.y1 + dy;
        const x2 = command.x2 + dx;
        const y2 = command.y2 + dy;
        commands.push({ to: 'cubic', x1, y1, x2, y2, x: toX, y: toY });
        cubicHandle = { x: x2, y: y2 };
        break;
      }
      case SVGPathData.QUAD_TO:
        addQuad(command.x1 + dx, command.y1 + dy, toX, toY);
        break;
      case SVGPathData.SMOOTH_QUAD_TO:
        addQuad(
          before.quad === null ? x : 2 * x - before.quad.x,
          before.quad === null ? y : 2 * y - before.quad.y,
          toX,
          toY,
        );
        break;
      case SVGPathData.ARC:
        commands.push(
          ...arc(x, y, command.rX, command.rY, command.xRot, command.lArcFlag === 1, command.sweepFlag === 1, toX, toY),
        );
        break;
      default:
        commands.push({ to: 'line', x: toX, y: toY });
    }
    x = toX;
    y = toY;
  }
  return { commands, whole };
}
