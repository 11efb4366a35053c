import type { Raster } from './raster.ts';

/** A view of a picture turned about its middle, so that a direction of interest runs upright. */
export interface TurnedFrame {
  readonly width: number;
  readonly height: number;
  readonly cosine: number;
  readonly sine: number;
  readonly sourceCentreX: number;
  readonly sourceCentreY: number;
}

/**
 * The frame in which the picture direction `angle` (radians from the x axis towards the y axis, which points down)
 * runs straight down the columns. Its size holds the whole picture.
 */
export function turnedFrame(width: number, height: number, angle: number): TurnedFrame {
  const turn = angle - Math.PI / 2;
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  return {
    width: Math.ceil(Math.abs(width * cosine) + Math.abs(height * sine)),
    height: Math.ceil(Math.abs(width * sine) + Math.abs(height * cosine)),
    cosine,
    sine,
    sourceCentreX: (width - 1) / 2,
    sourceCentreY: (height - 1) / 2,
  };
}

/** Turned coordinates to those of the picture. */
export function toSource(frame: TurnedFrame, x: number, y: number): { x: number; y: number } {
  const dx = x - (frame.width - 1) / 2;
  const dy = y - (frame.height - 1) / 2;
  return {
    x: frame.sourceCentreX + frame.cosine * dx - frame.sine * dy,
    y: frame.sourceCentreY + frame.sine * dx + frame.cosine * dy,
  };
}

/** Picture coordinates to turned ones. */
export function toTurned(frame: TurnedFrame, x: number, y: number): { x: number; y: number } {
  const dx = x - frame.sourceCentreX;
  const dy = y - frame.sourceCentreY;
  return {
    x: (frame.width - 1) / 2 + frame.cosine * dx + frame.sine * dy,
    y: (frame.height - 1) / 2 - frame.sine * dx + frame.cosine * dy,
  };
}

/** Bilinear copy into the turned frame; outside the picture the nearest border pixel is repeated. */
export function turnRaster(raster: Raster, frame: TurnedFrame): Raster {
  const { width, height } = frame;
  const { data } = raster;
  const out = new Float32Array(width * height);
  const lastX = raster.width - 1.001;
  const lastY = raster.height - 1.001;
  for (let y = 0; y < height; y++) {
    const start = toSource(frame, 0, y);
    for (let x = 0; x < width; x++) {
      const sx = Math.min(lastX, Math.max(0, start.x + frame.cosine * x));
      const sy = Math.min(lastY, Math.max(0, start.y + frame.sine * x));
      const x0 = sx | 0;
      const y0 = sy | 0;
      const fx = sx - x0;
      const fy = sy - y0;
      const at = y0 * raster.width + x0;
      const above = data[at]! + fx * (data[at + 1]! - data[at]!);
      const below = data[at + raster.width]! + fx * (data[at + raster.width + 1]! - data[at + raster.width]!);
      out[y * width + x] = above + fy * (below - above);
    }
  }
  return { width, height, data: out };
}
