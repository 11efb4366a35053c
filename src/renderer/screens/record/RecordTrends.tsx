import { useMemo, useState } from 'react';
import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { Choice } from '../../parts/Choice.tsx';
import { shortDate } from '../../words/dates.ts';
import { inchesSaid, numberSaid, typedFigure } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';
import { TrendPlot } from './TrendPlot.tsx';
import { tickStep } from './tickStep.ts';
import { fellHeight, planOf, type TrendName, trendOf } from './trends.ts';

interface RecordTrendsProps {
  readonly piece: Piece;
  readonly records: readonly CheckRecord[];
  readonly chosen: string | null;
}

const sets = { edges: ['left', 'right', 'pass'], whole: ['width', 'halves'] } as const satisfies Record<
  string,
  readonly TrendName[]
>;

/** Edges, beat, width and halves through all checks, by height up the cloth or by date. */
export function RecordTrends({ piece, records, chosen }: RecordTrendsProps) {
  const { record: words, shell } = useWords();
  const [by, setBy] = useState<'height' | 'date'>('height');
  const [set, setSet] = useState<keyof typeof sets>('edges');
  const names: readonly TrendName[] = sets[set];
  const trends = useMemo(() => names.map((name) => trendOf(name, records, piece)), [names, records, piece]);
  const top = Math.max(20, ...records.map((record) => fellHeight(record.reading) ?? 0));
  const times = records.map((record) => Date.parse(record.taken ?? record.kept) / 1000);
  const first = Math.min(...times);
  const last = Math.max(...times);
  const room = Math.max(3600, (last - first) * 0.06);
  const range = useMemo(
    (): readonly [number, number] => (by === 'height' ? [-top * 0.06, top * 1.12] : [first - room, last + room]),
    [by, top, first, last, room],
  );
  /** From the plan to a plot's side, mm: the same for both edges, so that they can be held against each other. */
  const reachOf = (name: TrendName): number => {
    const shared = name === 'left' || name === 'right' ? (['left', 'right'] as const) : [name];
    return Math.max(
      ...shared.flatMap((each) => {
        const { value, allowance } = planOf(each, piece);
        const points = trends[names.indexOf(each)] ?? [];
        return [
          allowance * 2.2,
          ...points.map(({ measured }) => Math.abs(measured.value - value) + 1.3 * measured.sigma),
        ];
      }),
    );
  };
  const read = (name: TrendName) => (piece.units === 'mm' ? 'mm' : name === 'pass' ? 'decimal-inch' : 'fraction');
  const tick = (name: TrendName) => (value: number) => {
    const plan = planOf(name, piece).value;
    const size = (away: number) =>
      piece.units === 'mm' ? typedFigure(Math.round(away * 100) / 100) : inchesSaid(away / 25.4, 32);
    if (name === 'pass') return numberSaid(piece.units === 'mm' ? value : value / 25.4, piece.units === 'mm' ? 2 : 3);
    const side = name === 'halves' ? words.halfTick : words.edgeTick;
    return `${size(Math.abs(value - plan))} ${side(value > plan)}`;
  };
  const unit = piece.units === 'mm' ? 1 : 25.4;
  const heightSteps = piece.units === 'mm' ? [10, 20, 25, 50, 100, 200] : [0.5, 1, 2, 4, 10];
  const heightStep = heightSteps.find((step) => (top * 1.12) / (step * unit) <= 5) ?? heightSteps.at(-1)!;
  const heights = Array.from({ length: 8 }, (_, index) => index * heightStep).filter((each) => each * unit <= range[1]);
  const share = (value: number) => ((value - range[0]) / (range[1] - range[0])) * 100;
  const classes = ['record-plots', by === 'date' ? 'by-date' : '', names.length === 2 ? 'is-two' : ''];
  return (
    <div className="record-trends">
      <div className="record-choices">
        <Choice
          label={words.trendSet}
          value={set}
          options={[
            { value: 'edges', words: words.setEdges },
            { value: 'whole', words: words.setWhole },
          ]}
          onChoose={setSet}
        />
        <Choice
          label={words.trendBy}
          value={by}
          options={[
            { value: 'height', words: words.byHeight },
            { value: 'date', words: words.byDate },
          ]}
          onChoose={setBy}
        />
      </div>
      <div className={classes.filter((each) => each !== '').join(' ')}>
        {by === 'height' && (
          <div className="record-axis" aria-hidden="true">
            <span className="record-axis-unit">{shell[piece.units === 'mm' ? 'millimetres' : 'inches']}</span>
            <div className="record-axis-box">
              {heights.map((each) => (
                <span key={each} style={{ bottom: `calc((100% - 42px) * ${share(each * unit) / 100} + 33px)` }}>
                  {piece.units === 'mm' ? each : inchesSaid(each, 2)}
                </span>
              ))}
            </div>
          </div>
        )}
        {names.map((name, index) => (
          <TrendPlot
            key={name}
            title={words.trends[name]}
            label={words.trendLabel(words.trends[name])}
            points={trends[index] ?? []}
            plan={planOf(name, piece).value}
            allowance={planOf(name, piece).allowance}
            by={by}
            range={range}
            reach={reachOf(name)}
            step={tickStep(reachOf(name), read(name))}
            tick={tick(name)}
            chosen={chosen}
            none={words.noneSeen}
          />
        ))}
      </div>
      {by === 'date' && (
        <p className="record-dates">
          <span>{shortDate(new Date(first * 1000).toISOString())}</span>
          <span>{shortDate(new Date(last * 1000).toISOString())}</span>
        </p>
      )}
    </div>
  );
}
