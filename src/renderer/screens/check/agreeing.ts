import type { Flag, LoomReading } from '../../../core/model/check.ts';
import { deviationInRow } from '../../../core/model/deviationWords.ts';
import { type LengthUnits, lengthInWords } from '../../../core/model/lengthWords.ts';
import type { Measurement } from '../../../core/model/measurement.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import type { Words } from '../../words/en.ts';
import { edgeRuns } from './edgeRows.ts';
import { spread } from './probe.ts';

export type Standing = 'agrees' | 'close' | 'off';

const standing = (value: number, sigma: number, allowance: number): Standing =>
  Math.abs(value) <= allowance ? 'agrees' : Math.abs(value) <= 2 * sigma ? 'close' : 'off';

export interface AgreeingRow {
  readonly name: string;
  readonly figure: string;
  /** `close`: larger than the allowance, yet not by twice its give or take. `off`: by more, though nothing was flagged. */
  readonly stands: Standing;
}

/** Ends whose fells stand further apart than this are woven to different heights on purpose: no one level line. */
const ONE_LEVEL = 4;

/**
 * The straight line through the fells, weighted by their sigmas.
 * @returns how much higher the right end of the fell stands than the left, mm; null when there is no one line.
 */
export function fellTilt(reading: LoomReading): Measurement | null {
  const seen = reading.ends.flatMap((end) =>
    end.fell !== null && end.xAtFell !== null
      ? [{ x: end.xAtFell.value, y: end.fell.value, sigma: end.fell.sigma }]
      : [],
  );
  if (seen.length < 6) return null;
  let total = 0;
  let meanX = 0;
  let meanY = 0;
  for (const { x, y, sigma } of seen) {
    const weight = 1 / (sigma * sigma);
    total += weight;
    meanX += weight * x;
    meanY += weight * y;
  }
  meanX /= total;
  meanY /= total;
  let spreadX = 0;
  let together = 0;
  for (const { x, y, sigma } of seen) {
    const weight = 1 / (sigma * sigma);
    spreadX += weight * (x - meanX) ** 2;
    together += weight * (x - meanX) * (y - meanY);
  }
  const slope = together / spreadX;
  const scatter = seen.map(({ x, y }) => Math.abs(y - meanY - slope * (x - meanX)));
  if (scatter.filter((each) => each > ONE_LEVEL).length > seen.length * 0.1) return null;
  const breadth = seen.at(-1)!.x - seen[0]!.x;
  // Neighbouring ends share the evenness of the beat, so the scatter about the line counts, not only each sigma.
  const rms = Math.sqrt(scatter.reduce((sum, each) => sum + each * each, 0) / Math.max(1, seen.length - 2));
  const meanSigma = Math.sqrt(seen.length / total);
  const sigma = (Math.hypot(rms, meanSigma) / Math.sqrt(spreadX / total) / Math.sqrt(seen.length)) * breadth;
  return { value: slope * breadth, sigma, n: seen.length, source: 'line through the fells' };
}

/** The highest stretch seen of one edge, as one figure: the median over its topmost 10 mm. */
export function edgeAtFell(reading: LoomReading, edges: PlannedSelvedges, side: 'left' | 'right'): Measurement | null {
  const points = edgeRuns(reading, edges, side).flat();
  const top = points.at(-1);
  if (top === undefined) return null;
  const last = points.filter((point) => point.y > top.y - 10).sort((one, other) => one.out - other.out);
  const middle = last[Math.floor(last.length / 2)] ?? top;
  return { value: middle.out, sigma: middle.sigma, n: last.length, source: 'topmost 10 mm' };
}

/** What was measured and raises no flag, each with its figure. */
export function agreeingRows(
  reading: LoomReading,
  edges: PlannedSelvedges,
  allowance: number,
  units: LengthUnits,
  words: Words['check'],
): readonly AgreeingRow[] {
  const flagged = (test: (flag: Flag) => boolean) => reading.flags.some(test);
  const rows: AgreeingRow[] = [];
  for (const side of ['left', 'right'] as const) {
    const edge = edgeAtFell(reading, edges, side);
    const spoken = flagged((flag) => flag.side === side && (flag.kind === 'draw-in' || flag.kind === 'spreading'));
    if (edge === null || spoken) continue;
    rows.push({
      name: words.edges[side],
      figure: deviationInRow(edge, 'across', units),
      stands: standing(edge.value, edge.sigma, allowance),
    });
  }
  const tilt = fellTilt(reading);
  if (tilt !== null && !flagged((flag) => flag.kind === 'tilt')) {
    const level = Math.abs(tilt.value) <= Math.max(tilt.sigma, 0.5);
    const name = level ? words.fellLevel : tilt.value > 0 ? words.fellRightHigher : words.fellLeftHigher;
    const figure = `${lengthInWords(Math.abs(tilt.value), units, 'edge')} ± ${spread(tilt.sigma, units)}`;
    rows.push({ name, figure, stands: standing(tilt.value, tilt.sigma, allowance) });
  }
  if (reading.pass !== null && !flagged((flag) => flag.kind === 'beat')) {
    const decimals = units === 'mm' ? reading.pass.value.toFixed(2) : (reading.pass.value / 25.4).toFixed(3);
    const sigma = units === 'mm' ? reading.pass.sigma : reading.pass.sigma / 25.4;
    const figure = `${decimals} ${units} ± ${Math.max(sigma, units === 'mm' ? 0.01 : 0.001).toFixed(units === 'mm' ? 2 : 3)}`;
    rows.push({ name: words.passHeight, figure, stands: 'agrees' });
  }
  return rows;
}
