import { flagFinding } from '../../core/compare/flagFinding.ts';
import type { CheckRecord } from '../../core/model/check.ts';
import { passInRow, sizeInRow } from '../../core/model/deviationWords.ts';
import { inchesInWords, lengthInWords } from '../../core/model/lengthWords.ts';
import type { Measurement } from '../../core/model/measurement.ts';
import type { Piece } from '../../core/model/piece.ts';
import { MM_PER_INCH } from '../../core/model/units.ts';
import { dayInWords } from '../../core/report/dateWords.ts';
import { edgeDeviations } from '../../core/report/edgeDeviations.ts';
import type { PaperName } from '../../core/report/paper.ts';
import type { PlannedSelvedges } from '../../core/warp/plannedSelvedges.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { drawEdgeStrip } from './edgeStrip.ts';
import { Flow } from './flow.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';
import { cropToLoom, drawReportPhoto } from './reportPhoto.ts';

/** What a report is made from. */
export interface ReportInput {
  readonly piece: Piece;
  readonly check: CheckRecord;
  readonly planned: PlannedSelvedges;
  /** The photograph as displayed, as a JPEG whose pixels are turned already; null when it can't be had. */
  readonly photo: Uint8Array | null;
  readonly paper: PaperName;
  readonly language: LanguageName;
}

const figure = (one: Measurement | null, units: Piece['units']): string =>
  one === null ? 'not seen' : sizeInRow(one, units);

/** A height: what lies under the base says so, without a minus sign. */
const heightFigure = (one: Measurement | null, units: Piece['units']): string =>
  one === null || one.value >= 0
    ? figure(one, units)
    : `${figure({ ...one, value: -one.value }, units)} below the base`;

function middleFell(check: CheckRecord): Measurement | null {
  const fells = check.reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell]));
  if (fells.length === 0) return null;
  const sorted = [...fells].sort((one, other) => one.value - other.value);
  return sorted[Math.floor(sorted.length / 2)]!;
}

function topWidth(check: CheckRecord): { readonly y: number; readonly width: Measurement } | null {
  const rows = check.reading.selvedge.filter((row) => row.left !== null && row.right !== null);
  const row = rows.reduce<(typeof rows)[number] | null>(
    (best, one) => (best === null || one.y > best.y ? one : best),
    null,
  );
  if (row === null || row.left === null || row.right === null) return null;
  return {
    y: row.y,
    width: {
      value: row.right.value - row.left.value,
      sigma: Math.hypot(row.left.sigma, row.right.sigma),
      n: Math.min(row.left.n, row.right.n),
      source: 'selvedges',
    },
  };
}

/** The sentence at the head: what the photograph said, as a neighbour would put it. */
function sentenceOf({ check, piece }: ReportInput): string {
  const { reading } = check;
  if (reading.status !== 'measured')
    return reading.reasons[0]?.message[piece.units] ?? "This photograph couldn't be measured.";
  const open = reading.flags.filter((_, index) => !check.dismissed.some((one) => one.flag === index));
  if (open.length === 0) {
    return `Everything seen is where you planned it, to within ${lengthInWords(piece.making.allowance, piece.units, 'edge')}.`;
  }
  return open[0]!.message[piece.units];
}

/** A report of one check: the photograph with plan and cloth drawn over it, the figures, and every flag. */
export async function reportSheet(input: ReportInput): Promise<Uint8Array> {
  const { piece, check, planned } = input;
  const { reading } = check;
  const { units } = piece;
  const sheet = await newSheet(piece, `check of ${dayInWords(check.kept)}`, [JSON.stringify(check)], input.language);
  const flow = new Flow(sheet, piece, `check of ${dayInWords(check.kept)}`, input.paper);
  flow.head(piece.name, `Check of ${dayInWords(check.kept)}`);
  flow.say(sentenceOf(input), { face: 'heading', size: 15 });
  flow.skip(4);

  const top = flow.y;
  const photoWidth = 98;
  let photoFoot = top;
  if (input.photo !== null) {
    const image = await sheet.document.embedJpg(input.photo);
    const crop = cropToLoom(piece, reading);
    const height = (((photoWidth / crop.width) * image.height) / image.width) * crop.height;
    photoFoot = top - height;
    drawReportPhoto(flow.pen, piece, reading, planned, image, flow.left, photoFoot, photoWidth);
    const kind = check.photo.rendered ? 'A rendered picture, not a photograph of a loom. ' : '';
    const lines = reading.reference === null ? '' : 'Dashed: the plan. Solid: the cloth as measured.';
    photoFoot -= 5;
    for (const line of flow.pen.lines(`${kind}${lines}`, photoWidth, {
      size: 8,
    })) {
      flow.pen.text(line, flow.left, photoFoot, { size: 8, colour: palette.second });
      photoFoot -= 4;
    }
  }

  const side = flow.left + photoWidth + 8;
  const sideWidth = flow.right - side;
  const width = topWidth(check);
  const seen = reading.ends.filter((end) => end.seen).length;
  const facts: (readonly [string, string])[] = [
    ['Fell, middle', heightFigure(middleFell(check), units)],
    [width === null ? 'Width' : `Width, ${lengthInWords(width.y, units)} up`, figure(width?.width ?? null, units)],
    ['Width planned', lengthInWords(planned.right - planned.left, units, 'edge')],
    ['One pass', reading.pass === null ? 'not seen' : passInRow(reading.pass, units)],
    ['Ends seen', `${seen} of ${piece.warp.ends}`],
  ];
  let y = top;
  for (const [label, words] of facts) {
    flow.pen.line(side, y, flow.right, y, { colour: palette.rule, width: 0.3 });
    flow.pen.text(label, side, y - 5, { size: 9.5, colour: palette.second });
    flow.pen.text(words, flow.right, y - 5, { size: 9.5, face: 'strong', align: 'right' });
    y -= 7.4;
  }
  flow.pen.line(side, y, flow.right, y, { colour: palette.rule, width: 0.3 });

  const left = edgeDeviations(reading.selvedge, planned, 'left');
  const right = edgeDeviations(reading.selvedge, planned, 'right');
  const values = [...left, ...right].flatMap((row) => (row.deviation === null ? [] : [Math.abs(row.deviation.value)]));
  if (values.length > 0) {
    const part = units === 'mm' ? 1 : MM_PER_INCH / 16;
    const reach = part * Math.ceil(Math.max(3, 2 * piece.making.allowance, ...values) / part + 0.5);
    const gap = 6;
    const stripTop = y - 10;
    const stripBottom = Math.min(stripTop - 50, photoFoot + 8);
    const strip = {
      bottom: stripBottom,
      width: (sideWidth - gap) / 2,
      height: stripTop - stripBottom,
      shows: piece.cloth.height,
      reach,
    };
    drawEdgeStrip(flow.pen, { ...strip, left: side }, 'Left edge', left, piece.making.allowance, 'left');
    drawEdgeStrip(
      flow.pen,
      { ...strip, left: side + strip.width + gap },
      'Right edge',
      right,
      piece.making.allowance,
      'right',
    );
    y = stripBottom - 8;
    const reaches = units === 'mm' ? lengthInWords(reach, units) : `${inchesInWords(reach / MM_PER_INCH, 16)} inch`;
    flow.pen.text(`Up to ${reaches} from plan, by height; shaded: your allowance.`, side, y, {
      size: 7.5,
      colour: palette.second,
    });
  }
  flow.y = Math.min(photoFoot, y) - 4;
  flagTable(flow, input);
  if (check.note.trim() !== '') {
    flow.heading('Note');
    for (const paragraph of check.note.split(/\n+/)) {
      flow.say(paragraph, { own: true });
      flow.skip(2);
    }
  }
  flow.skip(2);
  flow.say(
    '± is one sigma rounded up: photographed again, the figure would move by no more than this two times in three. A flag is raised when a difference is more than your allowance and more than twice its give or take.',
    { size: 8.5, colour: palette.second },
  );
  flow.finish();
  return sheet.bytes();
}

function flagTable(flow: Flow, { piece, check }: ReportInput): void {
  const { reading } = check;
  flow.heading(reading.status === 'measured' ? 'What to mend' : 'Why it could not be measured');
  if (reading.status !== 'measured') {
    for (const reason of reading.reasons) {
      flow.say(`${reason.message[piece.units]} ${reason.remedy}`);
      flow.skip(2);
    }
    return;
  }
  if (reading.flags.length === 0) flow.say('Nothing to mend.');
  const figureWidth = 40;
  for (const [index, flag] of reading.flags.entries()) {
    const dismissed = check.dismissed.find((one) => one.flag === index);
    const width = flow.width - 10 - figureWidth;
    const said = flow.pen.lines(flag.message[piece.units], width, { size: 10, face: 'strong' });
    const todo = flow.pen.lines(flag.advice, width, { size: 10 });
    const aside = dismissed === undefined ? [] : flow.pen.lines(`Put aside: ${dismissed.reason}`, width, { size: 9 });
    const height = (said.length + todo.length + aside.length) * 4.9 + 3.4;
    flow.need(height);
    flow.rule();
    flow.pen.circle(flow.left + 3, flow.y - 4.6, 3, palette.ink);
    flow.pen.text(String(index + 1), flow.left + 3, flow.y - 5.85, {
      face: 'strong',
      size: 10,
      align: 'middle',
      colour: palette.white,
    });
    let y = flow.y - 5.2;
    for (const line of said) {
      flow.pen.text(line, flow.left + 10, y, { size: 10, face: 'strong' });
      y -= 4.9;
    }
    for (const line of todo) {
      flow.pen.text(line, flow.left + 10, y, { size: 10 });
      y -= 4.9;
    }
    for (const line of aside) {
      flow.pen.text(line, flow.left + 10, y, { size: 9, colour: palette.second });
      y -= 4.9;
    }
    const finding = flagFinding(flag, piece.units);
    if (finding !== null) {
      flow.pen.text(finding.figure, flow.right, flow.y - 5.2, { size: 11, face: 'strong', align: 'right' });
      flow.pen.text(finding.giveOrTake, flow.right, flow.y - 10, {
        size: 9,
        align: 'right',
        colour: palette.second,
      });
    }
    if (flag.yMm !== null) {
      const line = finding === null ? 5.2 : 14.4;
      flow.pen.text(`at ${lengthInWords(Math.max(0, flag.yMm), piece.units)} up`, flow.right, flow.y - line, {
        size: 9,
        align: 'right',
        colour: palette.second,
      });
    }
    flow.y -= Math.max(height, flag.yMm === null ? 12.4 : 17);
  }
  if (reading.flags.length > 0) flow.rule();
}
