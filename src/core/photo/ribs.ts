import type { RibRow } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { Beat, FloatScale } from './beat.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { RibCourse } from './ribCourse.ts';
import type { LoomSampler } from './sampleLoom.ts';

/** Passes that one reading looks at, and height between readings, mm. */
const WINDOW_PASSES = 10;
const EVERY = 10;
/** A rib whose neighbours' floats don't clearly alternate with its own is not read. */
const CLEAR = 0.45;
/** No rib is known better than this, mm: floats lie unevenly on their ends. */
const FLOOR = 0.12;

/**
 * Where every end lies inside the cloth. Floats of neighbouring ends come a pass apart, so what swings once in two
 * passes changes sign from rib to rib: across the cloth it is a wave of twice the pitch whose crests are the ribs. Half of
 * that wave is floats, nearer to the camera than the strings, half the dark between them in the strings' plane: by half
 * of a float's share it is seen too far from the camera's foot.
 */
export function readRibs(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: RibCourse,
  beat: Beat,
  scale: FloatScale,
  tops: readonly { readonly end: number; readonly y: number }[],
  sharedX: (x: number, y: number) => number,
): RibRow[] {
  const highest = Math.max(0, ...tops.map((top) => top.y));
  const topOf = new Map(tops.map((top) => [top.end, top.y]));
  const pass = beat.pass.value;
  const half = (WINDOW_PASSES * pass) / 2;
  const rows: RibRow[] = [];
  for (let y = half; y + half < highest; y += EVERY) {
    const x: (Measurement | null)[] = [];
    for (let end = 0; end < frame.ends; end++) {
      const woven = (index: number) => index < 0 || index >= frame.ends || (topOf.get(index) ?? 0) >= y + half;
      const readable = topOf.has(end) && woven(end) && woven(end - 1) && woven(end + 1);
      const seen = readable ? ribAt(sampler, frame, course, beat, end, y, half, sharedX) : null;
      x.push(seen && { ...seen, value: scale.footX + (seen.value - scale.footX) / (1 + scale.enlarged / 2) });
    }
    if (x.some((one) => one !== null)) rows.push({ y, x });
  }
  return rows;
}

function ribAt(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: RibCourse,
  beat: Beat,
  end: number,
  y: number,
  half: number,
  sharedX: (x: number, y: number) => number,
): Measurement | null {
  const { pitch } = frame;
  // An outer end has a neighbour on one side only; its own breadth must do.
  const reach = end === 0 || end === frame.ends - 1 ? 0.5 * pitch : pitch;
  const stepX = Math.max(frame.mmPerPx, pitch / 24);
  const stepY = frame.mmPerPx;
  const side = Math.round(reach / stepX);
  const columns = 2 * side + 1;
  const cosine = new Float64Array(columns);
  const sine = new Float64Array(columns);
  const mean = new Float64Array(columns);
  let weightSum = 0;
  let meanCos = 0;
  let meanSin = 0;
  const place = new Float32Array(3);
  const middle = course(end, y);
  for (let v = y - half; v <= y + half; v += stepY) {
    const angle = Math.PI * beat.passesAt(v, end);
    const weight = 0.5 + 0.5 * Math.cos((Math.PI * (v - y)) / half);
    const c = weight * Math.cos(angle);
    const s = weight * Math.sin(angle);
    weightSum += weight;
    meanCos += c;
    meanSin += s;
    // The end's own lean within the window is followed.
    const at = course(end, v) + frame.centreX;
    for (let k = 0; k < columns; k++) {
      sampler.read(at + (k - side) * stepX, v + frame.baseY, place, 0);
      cosine[k]! += c * place[0]!;
      sine[k]! += s * place[0]!;
      mean[k]! += weight * place[0]!;
    }
  }
  // The phase is the same for all ends but for its sign: take it from all columns together.
  let double = 0;
  let doubleSin = 0;
  for (let k = 0; k < columns; k++) {
    cosine[k]! -= (mean[k]! / weightSum) * meanCos;
    sine[k]! -= (mean[k]! / weightSum) * meanSin;
    double += cosine[k]! ** 2 - sine[k]! ** 2;
    doubleSin += 2 * cosine[k]! * sine[k]!;
  }
  const phase = Math.atan2(doubleSin, double) / 2;
  let real = 0;
  let imaginary = 0;
  let power = 0;
  let shape = 0;
  for (let k = 0; k < columns; k++) {
    const swing = cosine[k]! * Math.cos(phase) + sine[k]! * Math.sin(phase);
    const u = (k - side) * stepX;
    const window = 0.5 + 0.5 * Math.cos((Math.PI * u) / (reach * 1.02));
    real += window * swing * Math.cos((Math.PI * u) / pitch);
    imaginary += window * swing * Math.sin((Math.PI * u) / pitch);
    power += window * swing * swing;
    shape += window * Math.cos((Math.PI * u) / pitch) ** 2;
  }
  const size = Math.hypot(real, imaginary);
  const clear = size / Math.sqrt(Math.max(1e-9, power * shape));
  if (clear < CLEAR) return null;
  // The crest or, with the other sign, the trough nearest to the course.
  let off = (Math.atan2(imaginary, real) / Math.PI) * pitch;
  if (off > pitch / 2) off -= pitch;
  if (off < -pitch / 2) off += pitch;
  if (Math.abs(off) > 0.35 * pitch) return null;
  const noise = (pitch / Math.PI) * Math.sqrt(Math.max(0, 1 - clear * clear)) * 0.35;
  const x = middle + off;
  return measurement(x, Math.hypot(FLOOR, noise, sharedX(x, y)), WINDOW_PASSES / 2, 'floats of neighbouring ends');
}
