import { lengthInWords } from '../../core/model/lengthWords.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { StringMarks } from '../../core/model/plan.ts';
import type { Flow } from './flow.ts';
import { palette } from './palette.ts';

/** Heights to mark on the strings, end by end, for weaving without the cartoon behind the warp. */
export function drawMarks(flow: Flow, piece: Piece, marks: readonly StringMarks[]): void {
  const marked = marks.filter((one) => one.heightsMm.length > 0);
  flow.heading('Marks on the strings');
  flow.say(
    'Instead of the drawing, or beside it: measure up from the top of the twining and mark each end where a line crosses it. Use a pen that washes out or will not rub off on the yarn; try it on a spare string first.',
  );
  flow.skip(4);
  if (marked.length === 0) {
    flow.say('No line crosses an end.');
    return;
  }
  const gap = 8;
  const width = (flow.width - gap) / 2;
  const step = 4.7;
  const rows = marked.map((one) => ({
    end: String(one.end + 1),
    lines: flow.pen.lines(one.heightsMm.map((mm) => lengthInWords(mm, piece.units)).join(', '), width - 12, {
      size: 9.5,
    }),
  }));
  let column = 0;
  let y = flow.y;
  for (const row of rows) {
    const height = row.lines.length * step + 1.6;
    if (y - height < flow.bottom) {
      if (column === 0) column = 1;
      else {
        flow.newPage();
        column = 0;
      }
      y = flow.y;
    }
    const left = flow.left + column * (width + gap);
    flow.pen.line(left, y, left + width, y, { colour: palette.rule, width: 0.25 });
    flow.pen.text(row.end, left + 7, y - 4, { face: 'strong', size: 10, align: 'right' });
    for (const [at, line] of row.lines.entries()) flow.pen.text(line, left + 12, y - 4 - at * step, { size: 9.5 });
    y -= height;
  }
  flow.y = flow.bottom;
}
