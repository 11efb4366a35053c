import { makeChart } from '../chart/makeChart.ts';
import type { Flag, LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { type EdgeCourse, edgeCourse } from './edgeCourse.ts';
import { edgeFlags } from './edgeFlags.ts';
import { fellLean, tiltFlags, unevenFlags } from './fellFlags.ts';
import { type EdgeForecast, forecastEdge } from './forecast.ts';
import { type Mirrored, mirroredHeights } from './mirrored.ts';
import { type MotifEdge, motifEdges } from './motifEdges.ts';
import { motifFlags } from './motifFlags.ts';
import { beatFlags, countFlags } from './planFlags.ts';
import { type SchedulePlace, schedulePlaces } from './schedulePlace.ts';
import { spreadFlags } from './spreadFlags.ts';
import { stringFlags } from './stringFlags.ts';

export interface CompareOptions {
  /** Both halves are said to be finished, or the weaver asks to compare them. */
  readonly halvesFinished?: boolean;
}

/** A reading held against the plan. */
export interface Comparison {
  readonly flags: readonly Flag[];
  readonly edges: readonly EdgeCourse[];
  readonly forecasts: readonly EdgeForecast[];
  /** Always shown; called uneven only when the halves are said to be finished. */
  readonly mirrored: Mirrored;
  /** Motif edges seen in the cloth against the chart; empty where no colours were read. */
  readonly motif: readonly MotifEdge[];
  /** Where in the schedule each half stands, in turns; empty where the passes were not read. */
  readonly places: readonly SchedulePlace[];
}

export function compareReading(reading: LoomReading, piece: Piece, options: CompareOptions = {}): Comparison {
  const { allowance } = piece.making;
  const { notchPitch } = piece.loom;
  const passMm = reading.pass?.value ?? piece.cloth.passHeight;
  const edges = [edgeCourse(reading, piece, 'left'), edgeCourse(reading, piece, 'right')];
  const mirrored = mirroredHeights(reading.ends, piece.warp.ends, passMm);
  const lean = fellLean(reading.ends, notchPitch, passMm);
  const motif = reading.colours ? motifEdges(reading, piece, makeChart(piece).chart) : [];
  const flags = [
    ...countFlags(reading, piece),
    ...stringFlags(reading, piece),
    ...edgeFlags(edges, allowance),
    ...spreadFlags(reading.ends, notchPitch, allowance),
    ...tiltFlags(lean, allowance),
    ...unevenFlags(mirrored, options.halvesFinished ?? false, allowance),
    ...beatFlags(reading, piece),
    ...motifFlags(motif, piece),
  ];
  const forecasts = edges.flatMap((edge) => {
    const forecast = forecastEdge(edge, piece.cloth.height, allowance);
    return forecast ? [forecast] : [];
  });
  return { flags, edges, forecasts, mirrored, motif, places: schedulePlaces(reading, piece, motif) };
}
