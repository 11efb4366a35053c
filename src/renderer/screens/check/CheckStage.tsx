import { useEffect, useMemo, useRef, useState } from 'react';
import './checkStage.css';
import type { Comparison } from '../../../core/compare/compareReading.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { useWords } from '../../words/useWords.ts';
import { AsTaken } from './AsTaken.tsx';
import { type Look, useChecks } from './checkStore.ts';
import { EdgeStrip } from './EdgeStrip.tsx';
import { edgeRuns } from './edgeRows.ts';
import { FellStrip } from './FellStrip.tsx';
import { FlagMarks } from './FlagMarks.tsx';
import { HeightAxis } from './HeightAxis.tsx';
import { Legend } from './Legend.tsx';
import type { LayerName, Layers } from './layers.ts';
import { Photograph } from './Photograph.tsx';
import { StageFoot } from './StageFoot.tsx';
import { wholePiece } from './stageView.ts';

const none: readonly number[] = [];

interface CheckStageProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly edges: PlannedSelvedges;
  readonly comparison: Comparison;
  readonly layers: Layers;
  readonly onToggle: (layer: LayerName) => void;
  readonly asTaken: boolean;
  readonly onAsTaken: (asTaken: boolean) => void;
  readonly fell: boolean;
  readonly onFell: (fell: boolean) => void;
}

/** Axis, left strip, photograph, right strip: one height scale for all four. */
export function CheckStage(props: CheckStageProps) {
  const { look, piece, edges, comparison, layers, onToggle, asTaken, fell } = props;
  const { check: words, shell } = useWords();
  const chosen = useChecks((state) => state.chosenFlag);
  const choose = useChecks((state) => state.chooseFlag);
  const cell = useRef<HTMLDivElement>(null);
  const photograph = useRef<HTMLDivElement>(null);
  const { width, height } = useBoxSize(cell);
  const base = useMemo(
    () => wholePiece(width, height, edges.right, piece.cloth.height),
    [width, height, edges.right, piece.cloth.height],
  );
  const [view, setView] = useState(base);
  useEffect(() => setView(base), [base]);
  const marked = look.reading.flags[chosen]?.ends ?? none;
  const shown = view.width === base.width && view.height === base.height ? view : base;
  const strip = (side: 'left' | 'right') => {
    const course = comparison.edges.find((each) => each.side === side);
    const runs = course === undefined ? [] : edgeRuns(look.reading, course);
    const forecast = comparison.forecasts.find((each) => each.side === side && each.sentence !== null) ?? null;
    const markY = look.reading.flags[chosen]?.yMm ?? null;
    return (
      <EdgeStrip
        side={side}
        runs={runs}
        forecast={forecast}
        view={shown}
        base={base}
        planHeight={piece.cloth.height}
        allowance={piece.making.allowance}
        units={piece.units}
        markY={markY}
      />
    );
  };
  const marksAt = (side: 'left' | 'right') => (
    <FlagMarks
      flags={look.reading.flags}
      units={piece.units}
      side={side}
      view={shown}
      planHeight={piece.cloth.height}
      chosen={chosen}
      onChoose={choose}
    />
  );
  return (
    <section className="check-stage" aria-label={words.stageLabel}>
      <HeightAxis view={shown} units={piece.units} label={shell[piece.units === 'mm' ? 'millimetres' : 'inches']} />
      {strip('left')}
      <div className="check-photograph">
        <Legend layers={layers} onToggle={onToggle} />
        <div ref={cell} className="check-cell">
          {marksAt('left')}
          {asTaken ? (
            <AsTaken look={look} piece={piece} edges={edges} layers={layers} marked={marked} />
          ) : (
            <Photograph
              box={photograph}
              look={look}
              piece={piece}
              edges={edges}
              layers={layers}
              marked={marked}
              view={shown}
              base={base}
              setView={setView}
            />
          )}
          {fell && !asTaken && <FellStrip reading={look.reading} view={shown} base={base} />}
          {marksAt('right')}
        </div>
        <StageFoot
          layers={layers}
          onToggle={onToggle}
          asTaken={asTaken}
          onAsTaken={props.onAsTaken}
          fell={fell}
          onFell={props.onFell}
          rendered={look.rendered}
          zoomed={shown !== base && !asTaken}
          onWhole={() => setView(base)}
        />
      </div>
      {strip('right')}
    </section>
  );
}
