import { BARE, type Chart } from '../../core/model/plan.ts';

/** Which part of the chart the picture shows, and how large. */
export interface ClothView {
  /** Ends and passes at the left and the bottom of the picture; fractions and places outside the cloth are allowed. */
  readonly leftEnd: number;
  readonly bottomPass: number;
  readonly pxPerEnd: number;
  readonly pxPerPass: number;
  readonly width: number;
  readonly height: number;
}

export const placeIn =
  (view: ClothView) =>
  (end: number, pass: number): { x: number; y: number } => ({
    x: (end - view.leftEnd) * view.pxPerEnd,
    y: view.height - (pass - view.bottomPass) * view.pxPerPass,
  });

interface ClothPaint {
  readonly chart: Chart;
  readonly parity: number;
  /** sRGB of each yarn, by its index. */
  readonly colours: readonly string[];
  /** Passes woven on each end; what lies above is still bare. */
  readonly woven: ArrayLike<number>;
}

/**
 * The woven part of the cloth as floats: weft-faced cloth shows the weft lying over every second end, each float two
 * passes tall because the pass above hides half of the one below.
 */
export function paintCloth(context: CanvasRenderingContext2D, view: ClothView, paint: ClothPaint): void {
  const { chart, parity, colours, woven } = paint;
  const place = placeIn(view);
  const sprites = view.pxPerPass >= 1.2 ? colours.map((colour) => floatSprite(colour, view)) : null;
  const firstEnd = Math.max(0, Math.floor(view.leftEnd) - 1);
  const lastEnd = Math.min(chart.ends - 1, Math.ceil(view.leftEnd + view.width / view.pxPerEnd) + 1);
  const firstPass = Math.max(0, Math.floor(view.bottomPass) - 2);
  const lastPass = Math.min(chart.passes - 1, Math.ceil(view.bottomPass + view.height / view.pxPerPass) + 2);
  for (let pass = firstPass; pass <= lastPass; pass++) {
    for (let end = firstEnd; end <= lastEnd; end++) {
      const yarn = chart.cells[pass * chart.ends + end]!;
      if (yarn === BARE || pass >= woven[end]!) continue;
      const corner = place(end, pass + 1);
      context.fillStyle = colours[yarn] ?? '#888888';
      context.fillRect(corner.x, corner.y, view.pxPerEnd + 0.6, view.pxPerPass + 0.6);
    }
  }
  if (sprites === null) return;
  for (let pass = firstPass; pass <= lastPass; pass++) {
    for (let end = firstEnd; end <= lastEnd; end++) {
      const yarn = chart.cells[pass * chart.ends + end]!;
      if (yarn === BARE || pass >= woven[end]! || (end + pass) % 2 !== parity) continue;
      const sprite = sprites[yarn];
      if (!sprite) continue;
      const middle = place(end + 0.5, pass + 0.5);
      context.drawImage(
        sprite.canvas,
        middle.x - sprite.width / 2,
        middle.y - sprite.height / 2,
        sprite.width,
        sprite.height,
      );
    }
  }
}

interface Sprite {
  readonly canvas: HTMLCanvasElement;
  readonly width: number;
  readonly height: number;
}

/** One float, drawn once at twice its size and then stamped. */
function floatSprite(colour: string, view: ClothView): Sprite {
  const width = view.pxPerEnd * 1.22;
  const height = view.pxPerPass * 2;
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(2, Math.ceil(width * 2));
  canvas.height = Math.max(2, Math.ceil(height * 2));
  const context = canvas.getContext('2d');
  if (context) {
    context.fillStyle = colour;
    context.strokeStyle = 'rgba(16, 21, 24, 0.38)';
    context.lineWidth = Math.min(2, canvas.height / 6);
    context.beginPath();
    context.ellipse(
      canvas.width / 2,
      canvas.height / 2,
      canvas.width / 2 - 1,
      canvas.height / 2 - 1,
      0,
      0,
      Math.PI * 2,
    );
    context.fill();
    context.stroke();
  }
  return { canvas, width, height };
}

/** Strings behind the cloth, one or two to an end, from the bottom of the picture to its top. */
export function paintStrings(
  context: CanvasRenderingContext2D,
  view: ClothView,
  ends: number,
  strings: { readonly perEnd: 1 | 2; readonly widthShare: number; readonly colour: string; readonly edge: string },
): void {
  const place = placeIn(view);
  const width = Math.max(1, strings.widthShare * view.pxPerEnd);
  const offsets = strings.perEnd === 2 ? [-0.9, 0.9] : [0];
  for (let end = 0; end < ends; end++) {
    const { x } = place(end + 0.5, 0);
    for (const offset of offsets) {
      const left = x + offset * width - width / 2;
      context.fillStyle = strings.edge;
      context.fillRect(left, 0, width, view.height);
      if (width > 3) {
        context.fillStyle = strings.colour;
        context.fillRect(left + 1, 0, width - 2, view.height);
      }
    }
  }
}

/** Fits a canvas to its box at the screen's own resolution and hands back a context in CSS pixels, wiped clean. */
export function freshContext(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
): CanvasRenderingContext2D | null {
  const ratio = window.devicePixelRatio || 1;
  const wide = Math.max(1, Math.round(width * ratio));
  const tall = Math.max(1, Math.round(height * ratio));
  if (canvas.width !== wide || canvas.height !== tall) {
    canvas.width = wide;
    canvas.height = tall;
  }
  const context = canvas.getContext('2d');
  context?.setTransform(ratio, 0, 0, ratio, 0, 0);
  context?.clearRect(0, 0, width, height);
  return context;
}
