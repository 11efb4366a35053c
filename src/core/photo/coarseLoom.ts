import type { BandView, Polarity } from './bandView.ts';
import { type BarComb, barComb } from './barComb.ts';
import { type BarPair, findBarPair } from './barPair.ts';
import { type Blend, blendChannels } from './blend.ts';
import { columnEdges, edgeLines } from './edgeLines.ts';
import type { Expected } from './expected.ts';
import type { Raster } from './raster.ts';
import { ridgeAnswer, ridgeTracks } from './ridgeTracks.ts';
import { type TurnedFrame, turnedFrame, turnRaster } from './turned.ts';
import type { TurnedPictures } from './turnedPictures.ts';
import { findWarpBand } from './warpBand.ts';
import { lineDirections } from './warpDirection.ts';

/**
 * The bands of strings the picture may hold, best first.
 * @param closest how many times larger than in a picture of the whole loom it may show.
 */
export function bandViews(
  source: TurnedPictures,
  blend: Blend,
  expected: Expected,
  directions = 3,
  closest = 1,
): BandView[] {
  const views: BandView[] = [];
  const blended = blendChannels(source.picture, blend);
  for (const angle of lineDirections(blended, directions)) {
    // A blend turned is the turned channels blended, at a third of the work.
    const frame = turnedFrame(blended.width, blended.height, angle);
    const largest = largestScale(frame, expected);
    const sigma = Math.max(0.9, 0.6 * halfEnd(expected) * LIKELY * largest);
    const answer = ridgeAnswer(turnRaster(blended, frame), sigma);
    for (const polarity of ['bright', 'dark'] as const) {
      const view = bandView(answer, sigma, largest, frame, angle, polarity, expected, closest);
      if (view) views.push(view);
    }
  }
  return views.sort((a, b) => b.band.score - a.band.score);
}

/** Half the breadth of an end, mm: two strings of a doubled end lie 1.1 diameters apart. */
export const halfEnd = (expected: Expected): number =>
  expected.stringDiameter * (expected.stringsPerEnd === 2 ? 1.05 : 0.5);

/** The loom fills the picture or less: px per mm at which it would all just be seen, and what share of that is likely. */
const largestScale = (frame: TurnedFrame, { openingHeight, openingWidth, bar }: Expected): number =>
  Math.min(frame.height / (openingHeight + 2 * bar), frame.width / (openingWidth + 2 * bar));
const LIKELY = 0.75;

function bandView(
  answer: Raster,
  sigma: number,
  largest: number,
  frame: TurnedFrame,
  angle: number,
  polarity: Polarity,
  expected: Expected,
  closest: number,
): BandView | null {
  const { pitch } = expected;
  const likely = LIKELY * largest;
  const tracks = ridgeTracks(answer, { sigma, polarity, step: 2, shortest: 12 * likely, gap: 15 * likely });
  const band = findWarpBand(
    tracks,
    answer.height,
    expected.ends,
    0.4 * largest * pitch,
    1.3 * closest * largest * pitch,
    Math.max(2, Math.round(4 * likely)),
  );
  if (!band) return null;
  return { angle, frame, polarity, tracks, band, scale: (y) => band.period(y) / pitch };
}

/** Bars and combs of one view, all in its turned frame. */
export interface CoarseLoom {
  readonly view: BandView;
  readonly bars: BarPair;
  readonly upperComb: BarComb;
  readonly lowerComb: BarComb;
}

/** Looks for the two bars that hold a band of strings, and for the comb at each. */
export function coarseLoom(source: TurnedPictures, view: BandView, expected: Expected): CoarseLoom | null {
  const { frame, band, scale } = view;
  const middleY = (band.top + band.bottom) / 2;
  const middle = (band.left(middleY) + band.right(middleY)) / 2;
  const reach = 0.46 * expected.openingWidth * scale(middleY);
  const { picture } = source.at(view.angle);
  const channels = picture.channels.map((data) => ({ width: picture.width, height: picture.height, data }));
  const from = Math.max(0, middle - reach);
  const to = Math.min(frame.width - 1, middle + reach);
  const every = 3;
  const points = columnEdges(channels, from, to, every, 1.5);
  const lines = edgeLines(points, frame.height, middle, Math.floor((to - from) / every) + 1, 0.16, 60);
  const bars = findBarPair(lines, scale, expected.openingHeight, expected.bar);
  if (!bars) return null;
  const upperComb = barComb(view, bars.upper, 1, expected);
  const lowerComb = barComb(view, bars.lower, -1, expected);
  if (!upperComb || !lowerComb) return null;
  return { view, bars, upperComb, lowerComb };
}
