import { createRequire } from 'node:module';
import type { Photo } from '../../core/photo/raster.ts';

/** The little of OpenCV that is used here, typed by hand: its own types say `any`. */
interface Freed {
  delete(): void;
}
interface Mat extends Freed {
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
}
interface KeyPoints extends Freed {
  size(): number;
  get(index: number): { readonly pt: { readonly x: number; readonly y: number } };
}
interface Match {
  readonly queryIdx: number;
  readonly trainIdx: number;
  readonly distance: number;
}
interface Matches extends Freed {
  size(): number;
  get(index: number): Freed & { size(): number; get(index: number): Match };
}
interface Cv {
  readonly Mat: new (rows: number, columns: number, type: number) => Mat;
  readonly ORB: new (
    most: number,
  ) => Freed & { detectAndCompute(picture: Mat, within: Mat, found: KeyPoints, descriptors: Mat): void };
  readonly BFMatcher: new (
    norm: number,
    crossCheck: boolean,
  ) => Freed & { knnMatch(before: Mat, now: Mat, matches: Matches, nearest: number): void };
  readonly KeyPointVector: new () => KeyPoints;
  readonly DMatchVectorVector: new () => Matches;
  readonly NORM_HAMMING: number;
  readonly CV_8UC1: number;
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

type MakeMat = (rows: number, columns: number, type: number) => Mat;

/** Runs with matrices and the like that are freed whatever happens; what OpenCV throws as a number becomes an Error. */
function withMats<Result>(work: (make: MakeMat, cv: Cv, own: <One extends Freed>(one: One) => One) => Result): Result {
  const port = cv();
  const made: Freed[] = [];
  const own = <One extends Freed>(one: One): One => {
    made.push(one);
    return one;
  };
  try {
    return work((rows, columns, type) => own(new port.Mat(rows, columns, type)), port, own);
  } catch (thrown) {
    if (typeof thrown === 'number') throw new Error(`OpenCV: ${port.exceptionFromPtr(thrown).msg}`);
    throw thrown;
  } finally {
    for (const one of made) one.delete();
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

/** A grey picture of one byte a pixel, and where in it to look (1) or not (0). */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
  readonly within: Uint8Array;
}

interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** So many corners are kept of each picture, the clearest. */
const MOST_CORNERS = 4500;
/** The likest must be so much liker than the next likest: among ribs that look alike none is believed (Lowe, IJCV 60, 2004). */
const CLEARLY = 0.85;

/**
 * Corners of one picture that look like one of another (ORB descriptors: Rublee and others, ICCV 2011), all pairs
 * compared. Many of the matches are false still.
 */
export function matchCorners(before: GreyPicture, now: GreyPicture): { before: Pixel; now: Pixel }[] {
  return withMats((make, port, own) => {
    const finder = own(new port.ORB(MOST_CORNERS));
    const cornersOf = ({ width, height, grey, within }: GreyPicture) => {
      const picture = make(height, width, port.CV_8UC1);
      picture.data.set(grey);
      const mask = make(height, width, port.CV_8UC1);
      // Where it makes pictures smaller, what isn't white in the mask falls out.
      mask.data.set(within.map((value) => (value === 0 ? 0 : 255)));
      const corners = own(new port.KeyPointVector());
      const descriptors = make(0, 0, port.CV_8UC1);
      finder.detectAndCompute(picture, mask, corners, descriptors);
      return { corners, descriptors };
    };
    const [a, b] = [cornersOf(before), cornersOf(now)];
    if (a.corners.size() === 0 || b.corners.size() < 2) return [];
    const matches = own(new port.DMatchVectorVector());
    own(new port.BFMatcher(port.NORM_HAMMING, false)).knnMatch(a.descriptors, b.descriptors, matches, 2);
    const found: { before: Pixel; now: Pixel }[] = [];
    for (let k = 0; k < matches.size(); k++) {
      const pair = matches.get(k);
      if (pair.size() === 2 && pair.get(0).distance < CLEARLY * pair.get(1).distance) {
        const { queryIdx, trainIdx } = pair.get(0);
        found.push({ before: a.corners.get(queryIdx).pt, now: b.corners.get(trainIdx).pt });
      }
      pair.delete();
    }
    return found;
  });
}
