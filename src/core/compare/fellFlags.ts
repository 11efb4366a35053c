import { inBothUnits } from '../model/bothUnits.ts';
import type { EndReading, Flag } from '../model/check.ts';
import { sizeAsFinding } from '../model/deviationWords.ts';
import { measurement } from '../model/measurement.ts';
import { robustSigma } from '../photo/statistics.ts';
import type { Mirrored } from './mirrored.ts';

/** A straight fell that leans: mm it rises from the left selvedge to the right. Null where the fell isn't straight. */
export function fellLean(
  ends: readonly EndReading[],
  pitch: number,
  passMm: number,
): { readonly riseMm: number; readonly sigmaMm: number; readonly y: number } | null {
  const points = ends.flatMap((end) =>
    end.fell ? [{ x: end.index * pitch, y: end.fell.value, sigma: end.fell.sigma }] : [],
  );
  if (points.length < 6) return null;
  const n = points.length;
  const meanX = points.reduce((sum, point) => sum + point.x, 0) / n;
  const meanY = points.reduce((sum, point) => sum + point.y, 0) / n;
  const spread = points.reduce((sum, point) => sum + (point.x - meanX) ** 2, 0);
  const slope = points.reduce((sum, point) => sum + (point.x - meanX) * (point.y - meanY), 0) / spread;
  const rest = points.map((point) => point.y - meanY - slope * (point.x - meanX));
  // Neighbours differ by a pass by nature; more than that and the fell is shaped on purpose.
  if (Math.max(...rest.map(Math.abs)) > 2.2 * passMm + 1) return null;
  const width = points[n - 1]!.x - points[0]!.x;
  const noise = Math.max(robustSigma(rest), Math.min(...points.map((point) => point.sigma)));
  return { riseMm: slope * width, sigmaMm: (noise / Math.sqrt(spread)) * width, y: meanY };
}

export function tiltFlags(lean: ReturnType<typeof fellLean>, allowance: number): Flag[] {
  if (!lean || Math.abs(lean.riseMm) <= allowance || Math.abs(lean.riseMm) <= 2 * lean.sigmaMm) return [];
  const low = lean.riseMm < 0 ? 'right' : 'left';
  const high = low === 'right' ? 'left' : 'right';
  const rise = measurement(lean.riseMm, lean.sigmaMm, 1, 'fell');
  return [
    {
      kind: 'tilt',
      side: low,
      yMm: lean.y,
      xMm: null,
      ends: [],
      deviationMm: lean.riseMm,
      sigmaMm: lean.sigmaMm,
      message: inBothUnits((units) => {
        const size = sizeAsFinding(rise, units);
        return `The fell falls ${size.figure} to the ${low}, ${size.giveOrTake}.`;
      }),
      advice: `Beat the ${high} half on its own for two turns, and the ${low} half more lightly.`,
    },
  ];
}

/** Unequal halves, called so only where both are said to be finished: until then one side may simply be ahead. */
export function unevenFlags(mirrored: Mirrored, halvesFinished: boolean, allowance: number): Flag[] {
  const { mean } = mirrored;
  if (!halvesFinished || !mean) return [];
  const size = Math.abs(mean.differenceMm);
  if (size <= allowance || size <= 2 * mean.sigmaMm) return [];
  const ahead = mean.differenceMm > 0 ? 'left' : 'right';
  const behind = ahead === 'left' ? 'right' : 'left';
  const turns = Math.abs(mean.turns);
  const count = turns === 1 ? 'one turn' : `${turns} turns`;
  return [
    {
      kind: 'uneven',
      side: behind,
      yMm: null,
      xMm: null,
      ends: [],
      deviationMm: mean.differenceMm,
      sigmaMm: mean.sigmaMm,
      message: inBothUnits((units) => {
        if (turns > 0) return `The ${ahead} half is ${count} ahead.`;
        const lead = sizeAsFinding(measurement(size, mean.sigmaMm, 1, 'fell'), units);
        return `The ${ahead} half is ${lead.figure} higher, less than a turn, ${lead.giveOrTake}.`;
      }),
      advice:
        turns === 0
          ? `Beat the ${ahead} half a little more firmly.`
          : `Weave ${turns} ${turns === 1 ? 'turn' : 'turns'} on the ${behind} before going on.`,
    },
  ];
}
