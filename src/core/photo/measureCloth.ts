import { makeChart } from '../chart/makeChart.ts';
import type { EndReading, LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { BARE } from '../model/plan.ts';
import type { Stage } from '../model/stage.ts';
import { bareFoot } from './bareFoot.ts';
import { type Beat, MOST_OFF_PLAN, readBeat } from './beat.ts';
import { doubtClothAbove, LOOKED_ABOVE } from './clothAbove.ts';
import { readColours } from './clothColours.ts';
import { clothFrame } from './clothFrame.ts';
import { endReadings } from './endReadings.ts';
import { doubtOddFloats } from './fellFloats.ts';
import { floatScale } from './floatScale.ts';
import { usualSwing } from './floatSwing.ts';
import type { LocatedLoom } from './loomPose.ts';
import { doubtUnwoven } from './lyingOver.ts';
import { measureFell } from './measureFell.ts';
import type { Photo } from './raster.ts';
import { readSelvedges, type SelvedgeLook, selvedgesBorneOut } from './readSelvedges.ts';
import { ribCourse } from './ribCourse.ts';
import { readRibs } from './ribs.ts';
import { loomSampler } from './sampleLoom.ts';
import { belowFell } from './selvedgeRows.ts';
import { median } from './statistics.ts';
import { stringRuns } from './stringRuns.ts';
import { doubtTopFloats } from './topFloats.ts';
import { lineUpTo, type WeaveLine, weaveLines } from './weaveLines.ts';

/** The figures of one photograph before they are compared with the plan. */
export type ClothReading = Pick<LoomReading, 'ends' | 'selvedge' | 'ribs' | 'pass' | 'beat' | 'colours'>;

/** What was read, and whether cloth is seen, but not where the plan has it begin. */
export interface ReadCloth {
  readonly cloth: ClothReading;
  readonly elsewhere: boolean;
}

export type OnStage = (name: Stage, done: number, of: number) => void;

/** Reads the cloth of a located loom: fell, selvedges, ribs, beat and colours, every figure with its sigma. */
export function measureCloth(photo: Photo, piece: Piece, located: LocatedLoom, onStage: OnStage = () => {}): ReadCloth {
  const { pose, tracks } = located;
  const frame = clothFrame(piece, pose);
  const sampler = loomSampler(photo, pose);
  const shared = (x: number, y: number) => pose.sharedSigma(x + frame.centreX, y + frame.baseY);
  const sharedX = (x: number, y: number) => shared(x, y).x;
  onStage('fell', 0, tracks.length);
  const { fells, unsharp } = measureFell(sampler, frame, tracks, (done, of) => onStage('fell', done, of));
  const firstEnds = endReadings(tracks, fells, frame, shared);
  const look: SelvedgeLook = { sampler, frame, fells, ends: firstEnds, unsharp, common: sharedX };
  const selvedge = readSelvedges(look, (done) => onStage('selvedges', done, 2));
  onStage('beat', 0, 1);
  const course = ribCourse(frame, firstEnds, selvedge);
  const tops = firstEnds.flatMap((end) => (end.fell ? [{ end: end.index, y: end.fell.value }] : []));
  const looked = tops.map(({ end, y }) => ({ end, y: y + LOOKED_ABOVE * frame.planPass * MOST_OFF_PLAN }));
  const farLines = weaveLines(sampler, frame, course, looked);
  const lines = farLines.map((line, i) => lineUpTo(line, tops[i]!.y));
  const scale = floatScale(frame, pose);
  const beat = readBeat(lines, frame, scale);
  const shows = WEAVE_SHOWS * frame.planPass;
  if (!beat && median(tops.map((end) => end.y)) > shows) {
    const nothing = { ends: firstEnds.map(weaveless), selvedge: [], ribs: [], pass: null, beat: [], colours: null };
    return { cloth: nothing, elsewhere: false };
  }
  const sureEnds = beat
    ? heldAgainstFloats(firstEnds, lines, farLines, beat)
    : firstEnds.map((end) => (end.fell && end.fell.value > shows ? weaveless(end) : end));
  const runs = stringRuns(sampler, frame, tracks, sureEnds);
  const ends = sureEnds.map((end, i) => ({ ...end, ...runs[i]! }));
  onStage('colours', 0, 1);
  const { chart } = makeChart(piece);
  const plannedYarn = (end: number, pass: number): number => {
    const charted = end >= 0 && end < chart.ends && pass >= 0 && pass < chart.passes;
    const yarn = charted ? chart.cells[pass * chart.ends + end]! : BARE;
    return yarn === BARE ? -1 : yarn;
  };
  const colours = beat && readColours(lines, beat, piece, plannedYarn);
  onStage('ribs', 0, 1);
  const ribs = beat ? readRibs(sampler, frame, course, beat, scale, tops, sharedX) : [];
  const floats = beat && { course, beat, usual: usualSwing(lines, beat) };
  const clear = floats ? selvedgesBorneOut(look, selvedge, floats) : selvedge;
  const cloth = {
    ends,
    selvedge: belowFell(clear, sureEnds),
    ribs,
    pass: beat?.pass ?? null,
    beat: beat?.rows ?? [],
    colours,
  };
  return { cloth, elsewhere: floats !== null && bareFoot(lines, floats.beat, floats.usual) };
}

const weaveless = (end: EndReading): EndReading => ({
  ...end,
  seen: false,
  why: end.why ?? 'no weave is seen below it',
  fell: null,
  xAtFell: null,
});

/** Cloth of this many passes shows its beat; where none is found, what was taken for cloth is most likely the table. */
const WEAVE_SHOWS = 40;

/** The fells that floats bear out: seen below them, in step with the cloth's, and not above. */
function heldAgainstFloats(
  ends: readonly EndReading[],
  lines: readonly WeaveLine[],
  farLines: readonly WeaveLine[],
  beat: Beat,
): EndReading[] {
  const onFloats = doubtOddFloats(ends, beat);
  const woven = doubtTopFloats(doubtUnwoven(onFloats, lines, beat), lines, beat);
  return doubtClothAbove(woven, farLines, beat);
}
