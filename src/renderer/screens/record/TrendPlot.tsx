import { useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import './trendPlot.css';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useShownTheme } from '../../theme/useShownTheme.ts';
import { drawTrend } from './drawTrend.ts';
import type { TrendPoint } from './trends.ts';

/** Room for the figure's own ticks at the left, px at the usual text size. */
const TICKS = 72;

interface TrendPlotProps {
  readonly title: string;
  readonly label: string;
  readonly points: readonly TrendPoint[];
  readonly plan: number;
  readonly allowance: number;
  /** Height up the cloth, or date: heights run up, dates run left to right. */
  readonly by: 'height' | 'date';
  readonly range: readonly [number, number];
  /** From the plan to either side of the plot, and to the figure's own ticks, mm. */
  readonly reach: number;
  readonly step: number;
  /** The figure's own tick, for example `3 in`. */
  readonly tick: (value: number) => string;
  readonly chosen: string | null;
  /** Said where no check shows this figure. */
  readonly none: string;
}

/** One figure through all checks, with its give or take, against the plan and the allowance. */
export function TrendPlot(props: TrendPlotProps) {
  const { title, label, points, plan, allowance, by, range, reach, step, tick, chosen, none } = props;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const textSize = useSettings((state) => state.settings.textSize);
  const theme = useShownTheme();
  // biome-ignore lint/correctness/useExhaustiveDependencies: colours and letters are read anew when the theme changes.
  useEffect(() => {
    const target = box.current;
    if (target === null || width === 0 || height === 0) return;
    const upright = by === 'height';
    const sorted = [...points].sort((one, other) => (upright ? one.height - other.height : one.time - other.time));
    const places = sorted.map((point) => (upright ? point.height : point.time));
    const options: uPlot.Options = {
      width,
      height,
      legend: { show: false },
      cursor: { show: false },
      // By date the figure's ticks stand before the first check, where nothing covers them.
      padding: upright ? [8, 8, 0, 8] : [8, 8, 8, (TICKS * textSize) / 100],
      scales: {
        x: { time: false, ori: upright ? 1 : 0, dir: 1, range: [range[0], range[1]] },
        y: { ori: upright ? 0 : 1, dir: 1, range: [plan - reach, plan + reach] },
      },
      axes: [{ show: false }, { show: false }],
      series: [{}, { show: true, stroke: 'transparent', points: { show: false } }],
      hooks: {
        draw: [(plot) => drawTrend(plot, sorted, { plan, allowance, upright, tick, chosen, step })],
      },
    };
    const plot = new uPlot(options, [places, sorted.map((point) => point.measured.value)], target);
    return () => plot.destroy();
  }, [width, height, points, plan, allowance, by, range, reach, step, tick, chosen, theme, textSize]);
  return (
    <figure className="trend">
      <figcaption>{title}</figcaption>
      <div ref={box} className="trend-box" role="img" aria-label={label}>
        {points.length === 0 && <p className="trend-none">{none}</p>}
      </div>
    </figure>
  );
}
