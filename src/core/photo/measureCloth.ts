import { makeChart } from '../chart/makeChart.ts';
import type { EndReading, LoomReading, SelvedgeRow } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { Piece } from '../model/piece.ts';
import { BARE } from '../model/plan.ts';
import { bareFoot } from './bareFoot.ts';
import { type Beat, type FloatScale, readBeat } from './beat.ts';
import { cameraOver } from './cameraOver.ts';
import { doubtClothAbove, LOOKED_ABOVE } from './clothAbove.ts';
import { readColours } from './clothColours.ts';
import { type ClothFrame, clothFrame } from './clothFrame.ts';
import { OUTSIDE_PICTURE } from './countEnds.ts';
import { outerEnds, withoutCovered } from './edgeCovered.ts';
import { alongEdge, INSIDE, withoutBeyond } from './edgeFloats.ts';
import type { EndFell } from './endFell.ts';
import { doubtOddFloats } from './fellFloats.ts';
import { FLOATS_SEEN } from './floatSwing.ts';
import type { LocatedLoom, LoomPose } from './loomPose.ts';
import { doubtUnwoven } from './lyingOver.ts';
import { measureFell } from './measureFell.ts';
import { measureSide } from './measureSelvedge.ts';
import type { Photo } from './raster.ts';
import { type RibCourse, ribCourse } from './ribCourse.ts';
import { readRibs } from './ribs.ts';
import { type LoomSampler, loomSampler } from './sampleLoom.ts';
import type { SideReading } from './sideReading.ts';
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

export type OnStage = (name: string, done: number, of: number) => void;

/** Reads the cloth of a located loom: fell, selvedges, ribs, beat and colours, every figure with its sigma. */
export function measureCloth(photo: Photo, piece: Piece, located: LocatedLoom, onStage: OnStage = () => {}): ReadCloth {
  const { pose, tracks } = located;
  const frame = clothFrame(piece, pose);
  const sampler = loomSampler(photo, pose);
  const shared = (x: number, y: number) => pose.sharedSigma(x + frame.centreX, y + frame.baseY);
  onStage('fell', 0, tracks.length);
  const { fells, unsharp } = measureFell(sampler, frame, tracks, (done, of) => onStage('fell', done, of));
  const firstEnds = tracks.map((track): EndReading => {
    const found = fells.find((fell) => fell.end === track.end);
    if (!found?.fell) {
      return {
        index: track.end,
        seen: false,
        why: found?.why ?? track.why ?? 'not seen',
        notchX: track.notchX && inCloth(track.notchX, frame),
        fell: null,
        xAtFell: null,
        bow: null,
        runsTo: null,
      };
    }
    const y = found.fell.value;
    const x = found.course.x(y + frame.baseY) - frame.centreX;
    const common = shared(x, y);
    const fell = measurement(y, Math.hypot(found.fell.sigma, common.y), found.fell.n, found.fell.source);
    const xAtFell = measurement(x, Math.hypot(found.course.sigma(y + frame.baseY), common.x), 1, 'string at the fell');
    return {
      index: track.end,
      seen: true,
      why: null,
      notchX: track.notchX && inCloth(track.notchX, frame),
      fell,
      xAtFell,
      bow: null,
      runsTo: null,
    };
  });
  onStage('selvedges', 0, 2);
  const sideOf = (which: 'left' | 'right', closely: boolean) =>
    side(fells, firstEnds, which, frame, sampler, unsharp, closely);
  const left = sideOf('left', false);
  onStage('selvedges', 1, 2);
  const right = sideOf('right', false);
  const agreed = agreeOnOverhang(left, right, firstEnds, frame);
  const common = (x: number, y: number) => shared(x, y).x;
  const selvedge = joinSides(agreed.left, agreed.right, common);
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
  const ribs = beat ? readRibs(sampler, frame, course, beat, scale, tops, (x, y) => shared(x, y).x) : [];
  let clear = selvedge;
  if (beat) {
    const bornOut = (rows: readonly SelvedgeRow[]) =>
      edgesOfCloth(rows, firstEnds, lines, course, sampler, frame, beat);
    clear = bornOut(selvedge);
    for (const which of ['left', 'right'] as const) {
      const read = (rows: readonly SelvedgeRow[]): number => rows.filter((row) => row[which]).length;
      if (read(clear) >= MOSTLY * read(selvedge)) continue;
      const again = sideOf(which, true);
      const [nearLeft, nearRight] = which === 'left' ? [again, []] : [[], again];
      clear = withSide(clear, bornOut(joinSides(nearLeft, nearRight, common)), which);
    }
  }
  const cloth = {
    ends,
    selvedge: belowFell(clear, sureEnds),
    ribs,
    pass: beat?.pass ?? null,
    beat: beat?.rows ?? [],
    colours,
  };
  return { cloth, elsewhere: beat !== null && bareFoot(lines, beat) };
}

const weaveless = (end: EndReading): EndReading => ({
  ...end,
  seen: false,
  why: end.why ?? 'no weave is seen below it',
  fell: null,
  xAtFell: null,
});

/** Passes are no higher than so many planned ones. */
const MOST_OFF_PLAN = 1.5;

/** Cloth of this many passes shows its beat; where none is found, what was taken for cloth is most likely the table. */
const WEAVE_SHOWS = 40;

/**
 * Floats lie nearer to the camera than the strings, about half a string above them and, the dark between floats lying
 * lower than their crests, half a weft thickness (a pass): they look larger, and farther from the camera's foot.
 */
function floatScale(frame: ClothFrame, pose: LoomPose): FloatScale {
  const string = frame.stringsPerEnd === 2 ? frame.endHalf / 1.05 : frame.endHalf * 2;
  const camera = cameraOver(pose);
  const enlarged = (string / 2 + frame.planPass) / camera.height;
  return {
    enlarged,
    baseAt: enlarged * (frame.baseY - camera.y),
    footX: camera.x - frame.centreX,
    scaleSigma: pose.reference.scaleSigma,
  };
}

const inCloth = (x: Measurement, frame: ClothFrame): Measurement => ({ ...x, value: x.value - frame.centreX });

function side(
  fells: readonly EndFell[],
  ends: readonly EndReading[],
  which: 'left' | 'right',
  frame: ClothFrame,
  sampler: LoomSampler,
  unsharp: number,
  closely: boolean,
): SideReading[] {
  // Where the outer notch is empty, the weft turns round the next end.
  const outer = outerEnds(ends)[which][0];
  if (outer === undefined) return [];
  const reading = ends.find((end) => end.index === outer);
  if (reading?.why === OUTSIDE_PICTURE) return [];
  const known = fells.filter((fell) => fell.fell);
  if (known.length === 0) return [];
  // Where the outer end itself isn't seen, its neighbour says how high to look.
  const nearest = known.reduce((a, b) => (Math.abs(b.end - outer) < Math.abs(a.end - outer) ? b : a));
  const top = reading?.fell?.value ?? nearest.fell!.value;
  const planned = frame.endX(outer);
  const atFell = reading?.xAtFell?.value ?? planned;
  return measureSide(
    sampler,
    frame,
    which,
    (y) => planned + (atFell - planned) * Math.min(1, y / Math.max(1, top)),
    top,
    unsharp,
    closely,
  );
}

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

/** The selvedges that floats bear out: none over which something lies, and none beyond the cloth. */
function edgesOfCloth(
  selvedge: readonly SelvedgeRow[],
  ends: readonly EndReading[],
  lines: readonly WeaveLine[],
  course: RibCourse,
  sampler: LoomSampler,
  frame: ClothFrame,
  beat: Beat,
): SelvedgeRow[] {
  // To as far above the topmost selvedge as a look at the floats reaches.
  const y = Math.max(0, ...selvedge.map((row) => row.y)) + FLOATS_SEEN * MOST_OFF_PLAN * frame.planPass;
  const outer = outerEnds(ends);
  const along = (of: readonly number[]) =>
    weaveLines(
      sampler,
      frame,
      course,
      of.map((end) => ({ end, y })),
    );
  let rows = withoutCovered(selvedge, lines, { left: along(outer.left), right: along(outer.right) }, beat);
  for (const side of ['left', 'right'] as const) {
    const edge = alongEdge(rows, side);
    const end = outer[side][0];
    if (!edge || end === undefined) continue;
    const inward = side === 'left' ? frame.pitch : -frame.pitch;
    const inside = INSIDE.flatMap((share) =>
      weaveLines(sampler, frame, (_, height) => edge(height) + share * inward, [{ end, y }]),
    );
    rows = withoutBeyond(rows, side, lines, inside, beat);
  }
  return rows;
}

/** A side of which less than this share is borne out is looked for again, close to its end. */
const MOSTLY = 0.7;

/** Rows with one side as others have it. */
function withSide(
  rows: readonly SelvedgeRow[],
  others: readonly SelvedgeRow[],
  which: 'left' | 'right',
): SelvedgeRow[] {
  const heights = [...new Set([...rows, ...others].map((row) => row.y))].sort((a, b) => a - b);
  return heights.map((y) => {
    const row = rows.find((one) => one.y === y) ?? { y, left: null, right: null };
    return { ...row, [which]: others.find((one) => one.y === y)?.[which] ?? null };
  });
}

/** Selvedges no higher than the fell that is still believed nearest to each: above it there may be bare string. */
function belowFell(rows: readonly SelvedgeRow[], ends: readonly EndReading[]): SelvedgeRow[] {
  const fells = ends.flatMap((end) => (end.fell ? [end.fell.value] : []));
  const [left, right] = [fells[0] ?? 0, fells[fells.length - 1] ?? 0];
  return rows
    .filter((row) => row.y < Math.max(left, right))
    .map((row) => ({ ...row, left: row.y < left ? row.left : null, right: row.y < right ? row.right : null }));
}

/** Near the fell the outer ends' places are known; there both selvedges lie about equally far beyond them, mm. */
const KNOWN_BELOW_FELL = 10;
const OVERHANG_APART = 1.8;
/** They differ by this much as a rule, mm; of what goes beyond, so large a share is doubted. */
const OVERHANG_USUAL = 0.3;
const DOUBTED = 0.6;

/**
 * Where the two sides disagree on how far the weft reaches past the outer end, something hangs from the one that is
 * farther from the usual: it is not read there.
 */
function agreeOnOverhang(
  left: readonly SideReading[],
  right: readonly SideReading[],
  ends: readonly EndReading[],
  frame: ClothFrame,
): { readonly left: readonly SideReading[]; readonly right: readonly SideReading[] } {
  const overhang = (rows: readonly SideReading[], index: number, sign: number): number | null => {
    const end = ends.find((one) => one.index === index);
    if (!end?.fell || !end.xAtFell) return null;
    const top = end.fell.value;
    const at = end.xAtFell.value;
    const near = rows.flatMap((row) => (row.x && row.y >= top - KNOWN_BELOW_FELL ? [sign * (row.x.value - at)] : []));
    return near.length > 0 ? median(near) : null;
  };
  const ofLeft = overhang(left, 0, -1);
  const ofRight = overhang(right, frame.ends - 1, 1);
  if (ofLeft === null || ofRight === null) return { left, right };
  const usual = frame.endHalf + 2 * frame.planPass;
  const apart = Math.abs(ofLeft - ofRight);
  const leftAstray = Math.abs(ofLeft - usual) > Math.abs(ofRight - usual);
  if (apart <= OVERHANG_APART) {
    const doubt = DOUBTED * Math.max(0, apart - OVERHANG_USUAL);
    const widened = (rows: readonly SideReading[]): SideReading[] =>
      rows.map((row) => (row.x ? { y: row.y, x: { ...row.x, sigma: Math.hypot(row.x.sigma, doubt) } } : row));
    return leftAstray ? { left: widened(left), right } : { left, right: widened(right) };
  }
  const hide = (rows: readonly SideReading[], index: number): SideReading[] => {
    const top = ends.find((one) => one.index === index)?.fell?.value ?? 0;
    return rows.map((row) => (row.y >= top - KNOWN_BELOW_FELL ? { y: row.y, x: null } : row));
  };
  return leftAstray ? { left: hide(left, 0), right } : { left, right: hide(right, frame.ends - 1) };
}

function joinSides(
  left: readonly SideReading[],
  right: readonly SideReading[],
  common: (x: number, y: number) => number,
): SelvedgeRow[] {
  const heights = [...new Set([...left, ...right].map((row) => row.y))].sort((a, b) => a - b);
  const at = (rows: readonly SideReading[], y: number): Measurement | null => {
    const x = rows.find((row) => row.y === y)?.x ?? null;
    return x && measurement(x.value, Math.hypot(x.sigma, common(x.value, y)), x.n, x.source);
  };
  return heights.map((y) => ({ y, left: at(left, y), right: at(right, y) }));
}
