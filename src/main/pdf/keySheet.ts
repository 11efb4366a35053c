import type { Piece } from '../../core/model/piece.ts';
import type { KeyGroup } from '../../core/report/keyGroups.ts';
import type { PaperName } from '../../core/report/paper.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { Flow } from './flow.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';

/** The keys that answer on every screen and on each of them, on one page to pin beside the loom. */
export async function keySheet(
  piece: Piece,
  groups: readonly KeyGroup[],
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const sheet = await newSheet(piece, 'keys', [], language);
  const flow = new Flow(sheet, piece, 'keys', paper);
  flow.head('Keys', 'Everything can be done from the keyboard. F1 or ? shows them on the screen.');
  const gap = 10;
  const column = (flow.width - gap) / 2;
  let columns = [flow.y, flow.y];
  for (const group of groups) {
    const rows = group.keys.map(({ keys, does }) => {
      const parts = keys.split(' + ');
      const caps = parts.reduce((sum, part) => sum + flow.pen.widthOf(part, { face: 'strong', size: 9 }) + 5, 0);
      const indent = Math.max(34, caps + 2);
      return { parts, indent, lines: flow.pen.lines(does, column - indent, { size: 9.5 }) };
    });
    const height = 11 + rows.reduce((sum, row) => sum + Math.max(6.6, row.lines.length * 4.6 + 2), 0);
    if (Math.max(...columns) - height < flow.bottom) {
      flow.newPage();
      columns = [flow.y, flow.y];
    }
    const side = columns[0]! >= columns[1]! ? 0 : 1;
    const left = flow.left + side * (column + gap);
    let y = columns[side]! - 5;
    flow.pen.text(group.title, left, y, { face: 'heading', size: 13 });
    y -= 6.4;
    for (const row of rows) {
      let x = left;
      for (const part of row.parts) {
        const width = flow.pen.widthOf(part, { face: 'strong', size: 9 }) + 3.4;
        flow.pen.box(x, y - 1.8, width, 5.4, palette.white, { colour: palette.edge, width: 0.3 });
        flow.pen.text(part, x + width / 2, y - 0.2, { face: 'strong', size: 9, align: 'middle' });
        x += width + 1.4;
      }
      for (const [at, line] of row.lines.entries()) {
        flow.pen.text(line, left + row.indent, y - 0.2 - at * 4.6, { size: 9.5 });
      }
      y -= Math.max(6.6, row.lines.length * 4.6 + 2);
    }
    columns[side] = y - 2;
  }
  flow.finish();
  return sheet.bytes();
}
