import { lengthInWords } from '../../core/model/lengthWords.ts';
import { countInWords } from '../../core/model/numberWords.ts';
import type { Piece } from '../../core/model/piece.ts';
import { mayStayOpen } from '../../core/order/slits.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import type { PaperName } from '../../core/report/paper.ts';
import { stackFromFoot } from '../../core/report/stackFromFoot.ts';
import { workTurns } from '../../core/report/workTurns.ts';
import { yarnLetter } from '../../core/report/yarnLetter.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { blockCard, type CardStrip } from './blockCard.ts';
import { drawBlockMap } from './blockMap.ts';
import { Flow } from './flow.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';

/** A card, or a part of one too tall for a page. */
interface CardPart {
  readonly strips: readonly CardStrip[];
  readonly height: number;
}

const heightOf = (strips: readonly CardStrip[]) => strips.reduce((sum, strip) => sum + strip.height, 0);

function partsOf(strips: readonly CardStrip[], room: number): CardPart[] {
  const parts: CardStrip[][] = [[]];
  for (const strip of strips) {
    if (parts.at(-1)!.length > 0 && heightOf(parts.at(-1)!) + strip.height > room) parts.push([]);
    parts.at(-1)!.push(strip);
  }
  return parts.map((part) => ({ strips: part, height: heightOf(part) }));
}

/**
 * The order of work to weave from: a map of the blocks, then every block from the foot of the page upward, as the
 * cloth grows, with a square to tick for each turn; slits and what to do about them at the end.
 */
export async function orderSheet(
  piece: Piece,
  plan: Plan,
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const texts = plan.blocks.flatMap((block) => [block.name, ...block.words, ...block.remarks]);
  const sheet = await newSheet(piece, 'order of work', texts, language);
  const flow = new Flow(sheet, piece, 'order of work', paper);
  const turns = workTurns(plan.blocks, plan.sequence);
  const passes = turns.reduce((sum, turn) => sum + turn.passes, 0);
  flow.head(
    piece.name,
    `${countInWords(plan.blocks.length, 'block')}, ${countInWords(passes / 2, 'turn')}, ${countInWords(plan.joins.length, 'join')}. Block 1 is the lowest; what lies under comes first.`,
  );
  const mapWidth = Math.min(flow.width - 52, 126);
  const top = flow.y;
  const mapFoot = drawBlockMap(flow.pen, piece, plan, flow.left, top, mapWidth, flow.room - 62);
  let y = top - 4;
  const beside = flow.left + mapWidth + 8;
  for (const [index, yarn] of piece.yarns.entries()) {
    flow.pen.swatch(beside, y - 4.6, 6.4, yarn.colour, yarnLetter(index));
    const name = { size: 10, own: true };
    const lines = flow.pen.lines(yarn.name, flow.right - beside - 9, name);
    for (const [at, line] of lines.entries()) flow.pen.text(line, beside + 9, y - 2.8 - at * 4.6, name);
    y -= Math.max(9, lines.length * 4.6 + 3);
  }
  flow.y = Math.min(mapFoot, y) - 4;
  flow.points(
    [
      'Read every page from the foot up. Tick a square for each turn: out and back once.',
      'A block begins only when the blocks under it are woven. Let neighbouring wefts meet and part; never weave over a gap.',
      `Check the width at every ${piece.units === 'mm' ? '25 mm' : 'inch'}, and after any rest.`,
    ],
    () => '•',
  );
  flow.skip(1);
  flow.caution([
    'Weaving is long, repeated work: sit high enough, rest your hands and eyes often, and stop when something hurts.',
    'Keep needles, beaters and scissors where neither you nor a child can sit on them. Follow local rules first.',
  ]);

  const room = flow.top - flow.bottom - 14;
  const parts = plan.blocks.flatMap((block) =>
    partsOf(blockCard(flow.pen, piece, plan, block, turns, flow.width), room),
  );
  const places = stackFromFoot(
    parts.map((part) => part.height),
    room,
    0,
  );
  for (const [index, part] of parts.entries()) {
    const place = places[index]!;
    if (index === 0 || places[index - 1]!.page !== place.page) {
      const pen = flow.newPage();
      const arrow = flow.left + 3;
      pen.line(arrow, flow.bottom + 1, arrow, flow.bottom + 7, { width: 0.6 });
      pen.path(
        [[arrow - 1.8, flow.bottom + 5.4, arrow, flow.bottom + 8.6, arrow + 1.8, flow.bottom + 5.4]],
        true,
        palette.ink,
        null,
      );
      pen.text(index === 0 ? 'Start here and read upward' : 'Read upward from here', arrow + 4, flow.bottom + 3, {
        size: 9,
        colour: palette.second,
      });
    }
    let stripTop = flow.bottom + 12 + place.bottom + part.height;
    for (const strip of part.strips) {
      strip.draw(flow.pen, flow.left, stripTop);
      stripTop -= strip.height;
    }
  }
  if (plan.slits.some((slit) => !mayStayOpen(slit, piece))) slitTable(flow, piece, plan);
  flow.finish();
  return sheet.bytes();
}

function slitTable(flow: Flow, piece: Piece, plan: Plan): void {
  flow.newPage();
  flow.heading('Slits');
  flow.say('Where two areas meet along a string and nothing joins them. Sewing is done before the piece is hung.');
  flow.skip(3);
  const long = plan.slits.filter((slit) => !mayStayOpen(slit, piece));
  for (const slit of long) {
    const lines = flow.pen.lines(slit.remedy, flow.width - 84, { size: 10 });
    const height = lines.length * 4.9 + 3;
    flow.need(height);
    flow.rule();
    const y = flow.y - 5;
    const up = lengthInWords(slit.fromPass * plan.chart.passHeight, piece.units);
    flow.pen.text(`ends ${slit.between[0] + 1} and ${slit.between[1] + 1}`, flow.left, y, { face: 'strong', size: 10 });
    flow.pen.text(`${lengthInWords(slit.lengthMm, piece.units)}, from ${up} up`, flow.left + 34, y, { size: 10 });
    for (const [at, line] of lines.entries()) flow.pen.text(line, flow.left + 84, y - at * 4.9, { size: 10 });
    flow.y -= height;
  }
  flow.rule();
  // Nothing is to be done about these.
  const short = plan.slits.length - long.length;
  if (short > 0) flow.say(`Short enough to leave open: ${countInWords(short, 'slit')}.`);
}
