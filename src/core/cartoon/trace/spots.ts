/** Connected areas of a picture: a number for every pixel, and the size of each area in pixels. */
export interface Spots {
  readonly width: number;
  readonly height: number;
  readonly of: Int32Array;
  readonly sizes: readonly number[];
}

/** The pixels beside one another that hold the same value, joined by their sides. */
export function connectedSpots(values: Uint8Array, width: number, height: number): Spots {
  const of = new Int32Array(width * height).fill(-1);
  const sizes: number[] = [];
  const waiting = new Int32Array(width * height);
  for (let start = 0; start < of.length; start++) {
    if (of[start] !== -1) continue;
    const id = sizes.length;
    const value = values[start]!;
    let head = 0;
    let tail = 0;
    waiting[tail++] = start;
    of[start] = id;
    const take = (next: number) => {
      if (of[next] !== -1 || values[next] !== value) return;
      of[next] = id;
      waiting[tail++] = next;
    };
    while (head < tail) {
      const pixel = waiting[head++]!;
      const x = pixel % width;
      if (x > 0) take(pixel - 1);
      if (x < width - 1) take(pixel + 1);
      if (pixel >= width) take(pixel - width);
      if (pixel < of.length - width) take(pixel + width);
    }
    sizes.push(tail);
  }
  return { width, height, of, sizes };
}
