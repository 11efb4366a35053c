import { createRequire } from 'node:module';
import type { Photo } from '../../core/photo/raster.ts';

/** The little of OpenCV that is used here, typed by hand: its own types say `any`. */
interface Mat {
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  delete(): void;
}
interface Cv {
  readonly Mat: new (rows: number, columns: number, type: number) => Mat;
  readonly CV_8UC3: number;
  readonly CV_32FC1: number;
  readonly INTER_LINEAR: number;
  readonly BORDER_CONSTANT: number;
  readonly Scalar: new (...values: number[]) => unknown;
  remap(
    source: Mat,
    target: Mat,
    mapX: Mat,
    mapY: Mat,
    interpolation: number,
    border: number,
    borderValue: unknown,
  ): void;
  exceptionFromPtr(pointer: number): { readonly msg: string };
}

let loaded: Cv | null = null;

/** Loads it once in this thread. It compiles at once; it is thenable, so it must never pass through a promise. */
function cv(): Cv {
  if (loaded !== null) return loaded;
  const events = ['uncaughtException', 'unhandledRejection'] as const;
  const before = new Map(events.map((event) => [event, process.listeners(event as 'uncaughtException')]));
  loaded = (createRequire(import.meta.url)('opencv-wasm') as { readonly cv: Cv }).cv;
  // It adds handlers that would swallow our own faults.
  for (const event of events) {
    for (const listener of process.listeners(event as 'uncaughtException')) {
      if (!before.get(event)?.includes(listener)) process.removeListener(event, listener);
    }
  }
  return loaded;
}

/** Runs with matrices that are freed whatever happens; what OpenCV throws as a number becomes an Error. */
function withMats<Result>(
  work: (make: (rows: number, columns: number, type: number) => Mat, cv: Cv) => Result,
): Result {
  const port = cv();
  const made: Mat[] = [];
  try {
    return work((rows, columns, type) => {
      const mat = new port.Mat(rows, columns, type);
      made.push(mat);
      return mat;
    }, port);
  } catch (thrown) {
    if (typeof thrown === 'number') throw new Error(`OpenCV: ${port.exceptionFromPtr(thrown).msg}`);
    throw thrown;
  } finally {
    for (const mat of made) mat.delete();
  }
}

/** Picks up a new picture from a photograph: `mapX`, `mapY` say for each new pixel where it comes from, in photo px. */
export function remapPhoto(photo: Photo, mapX: Float32Array, mapY: Float32Array, width: number, height: number): Photo {
  return withMats((make, port) => {
    const source = make(photo.height, photo.width, port.CV_8UC3);
    source.data.set(photo.rgb);
    const target = make(height, width, port.CV_8UC3);
    const x = make(height, width, port.CV_32FC1);
    const y = make(height, width, port.CV_32FC1);
    x.data32F.set(mapX);
    y.data32F.set(mapY);
    port.remap(source, target, x, y, port.INTER_LINEAR, port.BORDER_CONSTANT, new port.Scalar(228, 232, 230, 255));
    return { width, height, rgb: target.data.slice() };
  });
}
