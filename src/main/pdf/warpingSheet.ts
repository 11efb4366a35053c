import { lengthInWords, yarnLengthInWords } from '../../core/model/lengthWords.ts';
import { countInWords, numberInWords } from '../../core/model/numberWords.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { StringMarks } from '../../core/model/plan.ts';
import type { PaperName } from '../../core/report/paper.ts';
import { warpPlan } from '../../core/warp/warpPlan.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { Flow } from './flow.ts';
import { drawLoom, drawWrapping } from './loomDrawing.ts';
import { drawMarks } from './marksPage.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';

/**
 * How to put the warp on: figures, a drawing of the loom, the order of wrapping, and what to mark on the strings.
 * @param marks heights on each string; none leaves that page out.
 */
export async function warpingSheet(
  piece: Piece,
  marks: readonly StringMarks[],
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const sheet = await newSheet(piece, 'warping', [], language);
  const flow = new Flow(sheet, piece, 'warping', paper);
  const plan = warpPlan(piece);
  const { loom, warp, cloth, units } = piece;
  const length = (mm: number) => lengthInWords(mm, units);
  const cut = yarnLengthInWords(plan.length, units);
  flow.head(
    piece.name,
    `${countInWords(plan.ends, 'end')} on ${plan.strings} strings, notches ${plan.notches.first + 1} to ${plan.notches.last + 1}: cut ${cut} of ${warp.yarnName}.`,
  );

  const facts: readonly (readonly [string, string])[] = [
    ['Cut', `${cut} of ${warp.yarnName}, about ${numberInWords(plan.grams)} g${plan.gramsGuess ? ' by guess' : ''}`],
    ['Strings', `${plan.strings}, ${warp.stringsPerEnd === 2 ? 'two to an end' : 'one to an end'}`],
    ['Notches', `${plan.notches.first + 1} to ${plan.notches.last + 1} of ${loom.notches}, from the left`],
    ['Middle', middleWords(piece, plan.offCentre)],
    ['Width', `${length(plan.width)}, ends × pitch of ${lengthInWords(loom.notchPitch, units, 'pass-height')}`],
    ['Loops at the top', String(plan.loops)],
    ['One string', `${length(plan.run)} from notch to notch`],
    ['Base of the cloth', `${length(cloth.baseAboveBottomBar)} above the bottom bar`],
    ['Top of the cloth', `${length(cloth.baseAboveBottomBar + cloth.height)} above the bottom bar`],
    [
      'Header, footer',
      `${countInWords(cloth.headerPasses, 'pass', 'passes')}, ${countInWords(cloth.footerPasses, 'pass', 'passes')}`,
    ],
  ];
  const factWidth = 104;
  const top = flow.y;
  let y = top;
  for (const [label, words] of facts) {
    const lines = flow.pen.lines(words, factWidth - 34, { size: 10, face: 'strong' });
    flow.pen.line(flow.left, y, flow.left + factWidth, y, { colour: palette.rule, width: 0.3 });
    flow.pen.text(label, flow.left, y - 5, { size: 10, colour: palette.second });
    for (const [at, line] of lines.entries()) {
      flow.pen.text(line, flow.left + 34, y - 5 - at * 4.8, { size: 10, face: 'strong' });
    }
    y -= lines.length * 4.8 + 2.8;
  }
  flow.pen.line(flow.left, y, flow.left + factWidth, y, { colour: palette.rule, width: 0.3 });
  const drawn = { left: flow.left + factWidth + 6, width: flow.width - factWidth - 6 };
  const foot = drawLoom(flow.pen, piece, drawn.left, top, drawn.width, top - y + 4);
  flow.y = Math.min(y, foot) - 4;

  flow.heading('Order of wrapping');
  drawWrapping(flow.pen, piece, flow.left + 10, flow.y - 34, flow.width - 20, 34);
  flow.y -= 41;
  flow.say(plan.parity.sentence);
  if (plan.parity.remedy !== null) flow.say(plan.parity.remedy);
  flow.skip(3);
  flow.caution([
    'A tight string that slips or breaks can whip: keep your face out of its line, and wear glasses if you have them.',
    'Winding is long, repeated work. Change hands, stop often, and stop altogether when something hurts.',
    'Where a school, workshop or maker of the loom has rules, they come first.',
  ]);

  // All the steps together, so none is missed over a page.
  flow.need(49);
  flow.heading('Steps');
  flow.points(
    [
      `Stand or clamp the loom so it can't slide. Tie the string to the bottom bar at notch ${plan.notches.first + 1}.`,
      'Wind in the order drawn, with the same pull on every string. No string should be slack beside its neighbour.',
      `Count: ${plan.strings} strings, ${countInWords(plan.loops, 'loop')} over the top bar.`,
      'Press the middle of the warp: it should give by about the same all the way across. Even it out before you tie off.',
      `Mark ${length(cloth.baseAboveBottomBar)} above the bottom bar on the outer strings, and twine across with the top of the twining on the marks.`,
      `Spread the ends to their notches with the header: ${countInWords(cloth.headerPasses, 'pass', 'passes')}. Check the width before the first turn.`,
    ],
    (index) => `${index + 1}`,
  );
  if (marks.length > 0) {
    flow.newPage();
    drawMarks(flow, piece, marks);
  }
  flow.finish();
  return sheet.bytes();
}

function middleWords(piece: Piece, offCentre: number): string {
  if (Math.abs(offCentre) < 0.05) return "centred on the loom's middle";
  const side = offCentre > 0 ? 'right' : 'left';
  return `${lengthInWords(Math.abs(offCentre), piece.units, 'edge')} ${side} of the loom's middle`;
}
