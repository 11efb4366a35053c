import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Piece } from '../src/core/model/piece.ts';
import { followString } from '../src/core/photo/followString.ts';
import { type LoomPose, type StringTrack, toPhoto } from '../src/core/photo/loomPose.ts';
import { type ClothReading, measureCloth } from '../src/core/photo/measureCloth.ts';
import { barePart } from '../src/core/photo/measureStrings.ts';
import type { Photo } from '../src/core/photo/raster.ts';
import { ridgeAnswer, ridgeTracks } from '../src/core/photo/ridgeTracks.ts';
import { crossings } from '../src/core/photo/warpBand.ts';
import { decodePhoto } from './decodePhoto.ts';
import { bandSeen, fourPointPose, type Pair } from './fourPoints.ts';
import { pieceOf } from './measuring.ts';

/** No brief fits the real pictures: millimetres are a made-up piece's, only counts, pixels and ratios mean anything. */
const real = join(import.meta.dirname, '../tests/fixtures/real');
const counts = readFileSync(join(real, 'counts.md'), 'utf8');

/** Hand-marked fell, read from the table in counts.md. */
const marks: Pair[] = [
  ...counts
    .split('## Fell')[1]!
    .split('## Narrowing')[0]!
    .matchAll(/(\d{3,4}) \| (\d{3}\.\d)/g),
].map((match) => [Number(match[1]), Number(match[2])]);
/** Hand count of a picture: the first figure of its row. */
const handCount = (picture: string): number =>
  Number(new RegExp(`\\| ${picture} \\|[^|]*\\| (\\d+) \\|`).exec(counts)![1]);

/** Strings the stages count, and those counted by hand. */
export interface Counted {
  readonly counted: number;
  readonly byHand: number;
}

/** finish2 as read from four points and a made-up piece. */
export interface Finish2 {
  readonly strings: Counted;
  readonly woven: number;
  readonly endsRead: number;
  readonly marks: number;
  /** Fell read less fell marked, px, at every mark near which three ends were read. */
  readonly errors: readonly number[];
  readonly cloth: ClothReading;
}

function countStrings(
  photo: Photo,
  pose: LoomPose,
  left: number,
  right: number,
  low: number,
  high: number,
  pxPerMm: number,
  halfWidthPx: number,
): number {
  const band = bandSeen(photo, pose, left, right, low, high, 1 / pxPerMm);
  const sigma = 0.6 * halfWidthPx;
  const tracks = ridgeTracks(ridgeAnswer(band, sigma), {
    sigma,
    polarity: 'bright',
    step: 1,
    shortest: band.height * 0.6,
    gap: 4,
  });
  const met = crossings(tracks, Math.floor(band.height / 2));
  // Wires of the reed and gaps of light are ridges too, but much fainter than a string.
  const usual = met.map((crossing) => crossing.strength).sort((a, b) => a - b)[met.length >> 1] ?? 0;
  return met.filter((crossing) => crossing.strength > 0.4 * usual).length;
}
/** A piece whose warp is the picture's: dents at 2 mm, some of them woven, as high as the four points. */
function madeUpPiece(notches: number, firstNotch: number, ends: number, height: number, pass: number): Piece {
  return pieceOf({
    name: 'made up to fit a picture',
    loom: {
      kind: 'floor loom',
      notch_pitch_mm: 2,
      opening_width_mm: notches * 2,
      opening_height_mm: height,
      bar_mm: 20,
      notches,
      depth_mm: 20,
    },
    warp: { ends, strings_per_end: 1, string_diameter_mm: 0.9, first_notch: firstNotch },
    cloth: {
      base_above_bottom_bar_mm: 1,
      width_mm: ends * 2,
      height_mm: height * 0.6,
      pass_mm: pass,
      header_passes: 2,
    },
    yarns: ['#101014', '#f0ece0'],
    ground: 0,
    header_yarn: 0,
    shapes: [],
    scale_card: null,
  });
}

/** Strings of weavep5 in front of the reed: how many the stages count, and how many were counted by hand. */
export async function weavep5Strings(): Promise<Counted> {
  const weavep5 = await decodePhoto(readFileSync(join(real, 'weavep5.jpeg')));
  // Four points around the raised strings in front of the reed: first and last string, two heights.
  const ends = handCount('weavep5');
  const wide = ends - 1;
  const pose = fourPointPose(
    weavep5,
    [
      [0, 0],
      [wide, 0],
      [wide, 2],
      [0, 2],
    ],
    [
      [508.5, 332],
      [1210, 332],
      [1206, 300],
      [506.5, 300],
    ],
  );
  return { counted: countStrings(weavep5, pose, -1, wide + 1, 0, 2, 14.3, 1.5), byHand: ends };
}

/** What the stages read of finish2, beside what was counted and marked by hand. */
export async function readFinish2(): Promise<Finish2> {
  const finish2 = await decodePhoto(readFileSync(join(real, 'finish2.jpeg')));
  const ends = handCount('finish2');
  const wide = (ends - 1) * 2;
  const height = 213;
  // First and last string at the reed, and the outermost unwoven ones low down: straight, and evenly far apart.
  const pose = fourPointPose(
    finish2,
    [
      [-wide / 2, 0],
      [wide / 2, 0],
      [wide / 2, height],
      [-wide / 2, height],
    ],
    [
      [402, 900],
      [1180.3, 900],
      [1156.5, 318],
      [407.5, 318],
    ],
  );
  const counted = countStrings(finish2, pose, -wide / 2 - 2, wide / 2 + 2, height - 1, height + 4, 2.8, 1.7);

  // Four strings at the left and five at the right pass beside the cloth unwoven.
  const first = 4;
  const woven = ends - first - 5;
  const piece = madeUpPiece(ends, first, woven, height, 1.4);
  const map = (x: number, y: number) => toPhoto(pose, x, y);
  const tracks: StringTrack[] = Array.from({ length: woven }, (_, end) => {
    const notch = (first + end) * 2 - wide / 2;
    const bare = barePart(
      followString(finish2, map, notch, height - 1, 20, 0, {
        pitch: 2,
        halfEnd: 0.6,
        blur: 0.4,
        step: 1.5,
        fine: 0.24,
      }),
    );
    return {
      end,
      why: bare.length > 8 ? null : 'not followed',
      notchX: null,
      bare: bare.map(({ x, y, sigma }) => ({ x, y, sigma })).sort((a, b) => a.y - b.y),
    };
  });
  const { cloth } = measureCloth(finish2, piece, { pose, tied: null, endsCounted: woven, tracks, remarks: [] });
  const centreX = (first + (woven - ends) / 2) * 2;
  const seen = cloth.ends.flatMap((end) => {
    if (!end.fell || !end.xAtFell) return [];
    return [toPhoto(pose, end.xAtFell.value + centreX, end.fell.value + piece.cloth.baseAboveBottomBar)];
  });
  const errors: number[] = [];
  for (const [x, y] of marks) {
    const near = [...seen].sort((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x)).slice(0, 3);
    if (near.length < 3 || Math.abs(near[0]!.x - x) > 8) continue;
    const middle = near.map((place) => place.y).sort((a, b) => a - b)[1]!;
    errors.push(middle - y);
  }
  return { strings: { counted, byHand: ends }, woven, endsRead: seen.length, marks: marks.length, errors, cloth };
}
