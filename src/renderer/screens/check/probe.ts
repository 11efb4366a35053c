import type { LoomReading } from '../../../core/model/check.ts';
import { deviationInRow, giveOrTake } from '../../../core/model/deviationWords.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { figuresIn } from '../../../core/words/telling.ts';
import { useSettings } from '../../state/settingsStore.ts';
import type { Words } from '../../words/en.ts';
import { lengthSaid, rowFigure } from '../../words/figures.ts';
import { heightSaid } from '../../words/heights.ts';

/** How near a measured place the pointer must be to speak of it, mm. */
const NEAR = 5;

export interface Probe {
  readonly x: number;
  readonly y: number;
  readonly title: string;
  readonly figure: string;
}

/** What was measured nearest to a place on the cloth; where nothing was, the place itself with its own give or take. */
export function probeAt(
  x: number,
  y: number,
  reading: LoomReading,
  edges: PlannedSelvedges,
  units: LengthUnits,
  words: Words['check'],
): Probe {
  let best: (Probe & { readonly away: number }) | null = null;
  const offer = (away: number, probe: Probe) => {
    if (away <= NEAR && (best === null || away < best.away)) best = { ...probe, away };
  };
  for (const side of ['left', 'right'] as const) {
    for (const row of reading.selvedge) {
      const at = row[side];
      if (at === null || Math.abs(row.y - y) > 1.01) continue;
      const outward = side === 'left' ? -1 : 1;
      const deviation = { ...at, value: (at.value - edges[side]) * outward };
      offer(Math.abs(at.value - x), {
        x: at.value,
        y: row.y,
        title: words.probeEdge(words.edges[side], heightSaid(row.y, units, 'planned', words)),
        figure: rowFigure(deviation, 'across', units),
      });
    }
  }
  for (const end of reading.ends) {
    if (end.fell === null || end.xAtFell === null || Math.abs(end.xAtFell.value - x) > 4) continue;
    offer(Math.hypot(end.fell.value - y, end.xAtFell.value - x) * 0.9, {
      x: end.xAtFell.value,
      y: end.fell.value,
      title: words.probeFell(end.index + 1),
      figure: words.probeHeight(heightSaid(end.fell.value, units, 'edge', words), spread(end.fell.sigma, units)),
    });
  }
  if (best !== null) return best;
  const reference = reading.reference;
  const sigma = Math.hypot(reference?.baseSigmaMm ?? 0, (reference?.scaleSigma ?? 0) * Math.hypot(x, y), 0.1);
  return {
    x,
    y,
    title: words.probePlace,
    figure: words.probeAt(
      lengthSaid(Math.abs(x), units, 'edge'),
      x < 0 ? words.left : words.right,
      lengthSaid(Math.abs(y), units, 'edge'),
      y < 0,
      spread(sigma, units),
    ),
  };
}

/** One sigma in the weaver's units, rounded up to one figure (mm) or to the next part of an inch. */
export function spread(sigma: number, units: LengthUnits): string {
  if (units === 'mm') return figuresIn(useSettings.getState().settings.language, giveOrTake(sigma).text);
  return deviationInRow({ value: 0, sigma, n: 1, source: '' }, 'along', 'in').split('± ')[1] ?? '';
}
