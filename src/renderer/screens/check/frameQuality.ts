/** A piece of the live picture: lightness 0 to 255, row-major. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly light: Uint8Array;
}

export type Advice = 'dark' | 'bright' | 'moving' | 'blurred' | 'good';

export interface FrameQuality {
  readonly mean: number;
  /** Share of pixels at white. */
  readonly burnt: number;
  /**
   * Mean absolute change since the frame before, in lightness steps, over cells of 2 × 2 so that grain averages out,
   * and without what the whole picture gained or lost: a flickering lamp doesn't move anything.
   */
  readonly motion: number;
  /** Mean absolute second difference across, over the mean absolute first: high when edges are crisp. */
  readonly crispness: number;
}

/** Lightness from RGBA bytes, BT.709 weights. */
export function toFrame(rgba: Uint8ClampedArray, width: number, height: number): Frame {
  const light = new Uint8Array(width * height);
  for (let at = 0; at < light.length; at++) {
    light[at] = 0.2126 * rgba[4 * at]! + 0.7152 * rgba[4 * at + 1]! + 0.0722 * rgba[4 * at + 2]!;
  }
  return { width, height, light };
}

/** Changes of the 2 × 2 cells, each the sum of its four pixels. */
function cellChanges(before: Frame, { width, height, light }: Frame): Int16Array {
  const [columns, rows] = [width >> 1, height >> 1];
  const changes = new Int16Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let change = 0;
      for (const at of [2 * row * width + 2 * column, (2 * row + 1) * width + 2 * column]) {
        change += light[at]! + light[at + 1]! - before.light[at]! - before.light[at + 1]!;
      }
      changes[row * columns + column] = change;
    }
  }
  return changes;
}

function motionBetween(before: Frame, frame: Frame): number {
  // A camera that changes its size between two pictures has surely moved.
  if (before.width !== frame.width || before.height !== frame.height) return Number.POSITIVE_INFINITY;
  const changes = cellChanges(before, frame);
  const common = changes.reduce((sum, change) => sum + change, 0) / changes.length;
  const apart = changes.reduce((sum, change) => sum + Math.abs(change - common), 0);
  return apart / (4 * changes.length);
}

/**
 * @param frame the whole picture made small: light and movement are judged on it.
 * @param before the small picture of the look before; null at the first.
 * @param middle the middle of the picture at its full size: only there can it be seen whether strings are crisp.
 */
export function frameQuality(frame: Frame, before: Frame | null, middle: Frame): FrameQuality {
  const { light } = frame;
  let sum = 0;
  let burnt = 0;
  for (let at = 0; at < light.length; at++) {
    sum += light[at]!;
    if (light[at]! >= 250) burnt++;
  }
  let first = 0;
  let second = 0;
  const near = middle.light;
  for (let row = 0; row < middle.height; row++) {
    for (let column = 1; column < middle.width - 1; column++) {
      const at = row * middle.width + column;
      first += Math.abs(near[at + 1]! - near[at - 1]!) / 2;
      second += Math.abs(near[at + 1]! - 2 * near[at]! + near[at - 1]!);
    }
  }
  return {
    mean: sum / light.length,
    burnt: burnt / light.length,
    motion: before === null ? Number.POSITIVE_INFINITY : motionBetween(before, frame),
    crispness: first < 1e-9 ? 0 : second / first,
  };
}

/** The one thing worth saying about the live picture. Bounds are common practice, no source. */
export function adviceFor(quality: FrameQuality): Advice {
  if (quality.mean < 45) return 'dark';
  if (quality.burnt > 0.2) return 'bright';
  if (quality.motion > 4) return 'moving';
  if (quality.crispness < 0.35) return 'blurred';
  return 'good';
}
