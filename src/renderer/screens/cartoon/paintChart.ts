import type { ChartGrid } from '../../state/planning/questions.ts';
import { type Frame, RULER } from './frame.ts';

/** The cells of the cloth, the ends between them, turn lines from 3 px per mm, and the cloth's own edge. */
export function paintChart(
  context: CanvasRenderingContext2D,
  cells: ImageBitmap,
  grid: ChartGrid,
  frame: Frame,
  ink: string,
): void {
  const { ends, passes, pitch, passHeight } = grid;
  const half = (ends * pitch) / 2;
  const window = {
    left: RULER.left,
    top: RULER.top,
    right: frame.width - RULER.right,
    bottom: frame.height - RULER.bottom,
  };
  context.save();
  context.beginPath();
  context.rect(window.left, window.top, window.right - window.left, window.bottom - window.top);
  context.clip();
  context.imageSmoothingEnabled = false;
  const left = frame.x(-half);
  const top = frame.y(passes * passHeight);
  const width = frame.x(half) - left;
  const height = frame.y(0) - top;
  context.drawImage(cells, left, top, width, height);
  context.fillStyle = 'rgba(16, 21, 24, 0.28)';
  if (pitch * frame.look.pxPerMm >= 5) {
    for (let end = 0; end <= ends; end++) {
      const x = frame.x(end * pitch - half);
      if (x >= window.left && x <= window.right) context.fillRect(x - 0.5, top, 1, height);
    }
  }
  if (frame.look.pxPerMm >= 3) {
    context.fillStyle = 'rgba(16, 21, 24, 0.18)';
    for (let pass = 0; pass <= passes; pass += 2) {
      const y = frame.y(pass * passHeight);
      if (y >= window.top && y <= window.bottom) context.fillRect(left, y - 0.5, width, 1);
    }
  }
  context.strokeStyle = ink;
  context.lineWidth = 2;
  context.strokeRect(left, top, width, height);
  context.restore();
}
