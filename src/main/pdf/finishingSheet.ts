import { lengthInWords } from '../../core/model/lengthWords.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import type { PaperName } from '../../core/report/paper.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { Flow } from './flow.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';

type Planned = Pick<Plan, 'shopping' | 'hanging' | 'finishing' | 'materials'>;

/** What to buy, how the piece hangs, and the steps from the last pass to the wall: each with a square to tick. */
export async function finishingSheet(
  piece: Piece,
  plan: Planned,
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const { shopping, hanging, finishing } = plan;
  const texts = [
    ...shopping.flatMap((line) => [line.item, line.amount, line.note]),
    ...finishing.flatMap((step) => [step.step, step.caution ?? '']),
  ];
  const sheet = await newSheet(piece, 'buying and finishing', texts, language);
  const flow = new Flow(sheet, piece, 'buying and finishing', paper);
  flow.head(piece.name, 'What to buy, how it hangs, and the way from the last pass to the wall.');
  flow.heading('To buy, or to find at home');
  for (const line of shopping)
    row(flow, line.item, [line.amount, line.note].filter((words) => words !== '').join('. '));
  flow.rule();
  flow.heading('Hanging');
  const { dowel, cord, fringe } = hanging;
  flow.points(
    [
      `${dowel.verdict.sentence} ${dowel.verdict.why} ${dowel.verdict.remedy ?? ''}`.trim(),
      `Loops on the dowel, from the left: ${hanging.loopGroups.join(', ')}.`,
      `The cord rises ${lengthInWords(cord.rise, piece.units)} above the dowel.`,
      `${fringe.verdict.sentence} ${fringe.verdict.why} ${fringe.verdict.remedy ?? ''}`.trim(),
    ],
    () => '•',
  );
  flow.heading('Finishing');
  for (const step of finishing) row(flow, null, step.step, step.caution);
  flow.rule();
  flow.finish();
  return sheet.bytes();
}

/** A square to tick, what it is when that stands apart, what to do, and under it what to take care of. */
function row(flow: Flow, label: string | null, words: string, caution: string | null = null): void {
  const indent = label === null ? 9 : 62;
  const room = flow.width - indent;
  const labels = label === null ? [] : flow.pen.lines(label, indent - 12, { size: 10, face: 'strong' });
  const lines = flow.pen.lines(words, room, { size: 10 });
  const cautions = caution === null ? [] : flow.pen.lines(caution, room, { size: 9 });
  const height = Math.max(labels.length, lines.length) * 4.9 + cautions.length * 4.5 + 3.4;
  flow.need(height);
  flow.rule();
  const top = flow.y - 5;
  flow.pen.box(flow.left, top - 1, 4.4, 4.4, palette.white, { width: 0.35 });
  for (const [at, line] of labels.entries()) {
    flow.pen.text(line, flow.left + 9, top - at * 4.9, { size: 10, face: 'strong' });
  }
  for (const [at, line] of lines.entries()) flow.pen.text(line, flow.left + indent, top - at * 4.9, { size: 10 });
  for (const [at, line] of cautions.entries()) {
    const y = top - lines.length * 4.9 - at * 4.5;
    flow.pen.text(line, flow.left + indent, y, { size: 9, colour: palette.second });
  }
  flow.y -= height;
}
