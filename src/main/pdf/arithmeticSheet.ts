import type { Piece } from '../../core/model/piece.ts';
import type { Arithmetic } from '../../core/model/plan.ts';
import type { PaperName } from '../../core/report/paper.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { Flow } from './flow.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';

/** Every sum of the plan with its working, line by line. */
export async function arithmeticSheet(
  piece: Piece,
  sums: readonly Arithmetic[],
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const texts = sums.flatMap((sum) => [
    sum.title,
    ...sum.lines.flatMap((line) => [line.label, line.working, line.result]),
  ]);
  const sheet = await newSheet(piece, 'arithmetic', texts, language);
  const flow = new Flow(sheet, piece, 'arithmetic', paper);
  flow.head(piece.name, 'Every sum behind the plan, so it can be checked by hand.');
  const columns = { label: 44, result: 34 };
  const working = flow.width - columns.label - columns.result - 6;
  for (const sum of sums) {
    flow.heading(sum.title);
    for (const line of sum.lines) {
      const labels = flow.pen.lines(line.label, columns.label - 3, { size: 10 });
      const workings = flow.pen.lines(line.working, working, { size: 10 });
      const height = Math.max(labels.length, workings.length) * 4.9 + 3;
      flow.need(height);
      flow.rule();
      const top = flow.y - 5;
      for (const [at, words] of labels.entries()) {
        flow.pen.text(words, flow.left, top - at * 4.9, { size: 10, colour: palette.second });
      }
      for (const [at, words] of workings.entries()) {
        flow.pen.text(words, flow.left + columns.label, top - at * 4.9, { size: 10 });
      }
      flow.pen.text(line.result, flow.right, top, { size: 10, face: 'strong', align: 'right' });
      flow.y -= height;
    }
    flow.rule();
    flow.skip(3);
  }
  flow.finish();
  return sheet.bytes();
}
