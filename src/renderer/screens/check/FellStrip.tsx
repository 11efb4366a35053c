import './fellStrip.css';
import { useRef } from 'react';
import type { LoomReading } from '../../../core/model/check.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useWords } from '../../words/useWords.ts';
import { seenRuns } from './overlayPaths.ts';
import { type StageView, toScreenX } from './stageView.ts';

interface FellStripProps {
  readonly reading: LoomReading;
  readonly view: StageView;
  readonly base: StageView;
}

/** The fell by itself, end by end, sharing the photograph's breadth and drawn four times taller about its middle. */
export function FellStrip({ reading, view, base }: FellStripProps) {
  const words = useWords().check;
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(box);
  const fells = reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell.value])).sort((a, b) => a - b);
  const low = fells[0] ?? 0;
  const high = fells.at(-1) ?? 0;
  const level = (low + high) / 2;
  const span = Math.max(2, high - low);
  const perMm = Math.min(base.scale * 4, (height - 24) / span);
  const y = (value: number) => height / 2 - (value - level) * perMm;
  const runs = seenRuns(reading.ends, (end) =>
    end.fell === null || end.xAtFell === null
      ? null
      : { x: toScreenX(view, end.xAtFell.value), value: end.fell.value, sigma: end.fell.sigma },
  );
  const factor = Math.round(perMm / base.scale);
  return (
    <div ref={box} className="fell-strip">
      <svg width={width} height={height} role="img" aria-label={words.fellStripLabel}>
        {runs.map((run) => (
          <g key={run[0]?.x}>
            <path
              fill="var(--cloth-fill)"
              d={`M${run.map((each) => `${each.x} ${y(each.value + each.sigma)}`).join('L')}L${[...run]
                .reverse()
                .map((each) => `${each.x} ${y(each.value - each.sigma)}`)
                .join('L')}Z`}
            />
            <path
              fill="none"
              stroke="var(--cloth)"
              strokeWidth="3"
              d={`M${run.map((each) => `${each.x} ${y(each.value)}`).join('L')}`}
            />
          </g>
        ))}
      </svg>
      <span className="fell-strip-name">{words.fellStripTitle(Math.max(1, factor))}</span>
    </div>
  );
}
