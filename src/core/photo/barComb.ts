import type { BandView } from './bandView.ts';
import { type EdgeLine, edgeLineAt } from './edgeLines.ts';
import type { Expected } from './expected.ts';
import { combAcross, crossings } from './warpBand.ts';

/** Where the strings meet a bar, turned px, from left to right in the turned picture. */
export interface BarComb {
  readonly points: readonly { readonly step: number; readonly x: number; readonly y: number }[];
  /** How far inside the opening, mm, the comb was read. */
  readonly inside: number;
  readonly period: number;
}

/**
 * The comb just inside a bar. Several lines across, a few millimetres apart, are read; the count most of them agree on
 * wins, and of those the one nearest the bar.
 * @param inward 1 when the opening lies below the bar in the turned picture, −1 when above.
 */
export function barComb(view: BandView, bar: EdgeLine, inward: 1 | -1, expected: Expected): BarComb | null {
  const scale = view.scale(bar.at);
  const period = scale * expected.pitch;
  const readings: { offset: number; comb: BarComb }[] = [];
  for (let mm = 4; mm <= 24; mm += 1.5) {
    const offset = inward * mm * scale;
    const crossed = crossings(view.tracks, bar.at + offset - bar.slope * bar.middle, bar.slope);
    const chain = combAcross(crossed, 0.75 * period, 1.3 * period);
    if (!chain || chain.places.length < 0.4 * expected.ends) continue;
    readings.push({
      offset,
      comb: {
        period: chain.period,
        inside: mm,
        points: chain.places.map((place) => ({
          step: place.step,
          x: place.x,
          y: edgeLineAt(bar, place.x) + offset,
        })),
      },
    });
  }
  if (readings.length === 0) return null;
  const votes = new Map<number, number>();
  for (const { comb } of readings) {
    const ends = comb.points[comb.points.length - 1]!.step + 1;
    const favour = ends === expected.ends ? 1.5 : 1;
    votes.set(ends, (votes.get(ends) ?? 0) + favour);
  }
  const most = [...votes].sort((a, b) => b[1] - a[1])[0]![0];
  const chosen = readings.find(({ comb }) => comb.points[comb.points.length - 1]!.step + 1 === most)!;
  return chosen.comb;
}
