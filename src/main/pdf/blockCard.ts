import { lengthInWords } from '../../core/model/lengthWords.ts';
import { listInWords } from '../../core/model/listWords.ts';
import { countInWords } from '../../core/model/numberWords.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Block } from '../../core/model/plan.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import { type StepRun, stepRuns, type ToldStep } from '../../core/report/stepRuns.ts';
import type { WorkTurn } from '../../core/report/workTurns.ts';
import { yarnLetter } from '../../core/report/yarnLetter.ts';
import { palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** A strip of a card: as tall as it says, drawn below `top`. Cards are cut only between strips. */
export interface CardStrip {
  readonly height: number;
  readonly draw: (pen: Pen, left: number, top: number) => void;
}

/** Squares to tick, one for each turn, ten to a line. */
const tick = { size: 2.4, step: 3, perLine: 10, most: 60 };
/** A block with more steps than this is told in words alone. */
const mostSteps = 80;
const indent = 22;

const moveWords = (ends: number): string => (ends === 0 ? '' : `${ends < 0 ? 'in' : 'out'} ${Math.abs(ends)}`);

/** What both edges do after a step: `in 1`, `left in 1`, `left in 1, right out 2`. */
function movesInWords(moves: NonNullable<ToldStep['moves']>): string {
  const [left, right] = [moveWords(moves.left), moveWords(moves.right)];
  if (left === right) return left;
  return [left && `left ${left}`, right && `right ${right}`].filter(Boolean).join(', ');
}

interface StepCell {
  readonly step: ToldStep;
  readonly ends: string;
  readonly after: string;
  readonly cellWidth: number;
  readonly afterWidth: number;
  /** Squares to tick under the step; none where it comes again and again: there the times are ticked. */
  readonly ticks: number;
  /** Room before it for the bracket that opens a repeat. */
  readonly opens: number;
  /** How often the repeat comes that closes after this step, and the room for saying so; 1 and 0 elsewhere. */
  readonly times: number;
  readonly closes: number;
}

const bracket = 2.4;
const tickWidth = (ticks: number) => Math.min(tick.perLine, Math.ceil(ticks)) * tick.step;
const tickLines = (ticks: number) => Math.ceil(Math.ceil(ticks) / tick.perLine);
/** Lines of squares for the times a repeat comes. */
const repeatLines = (times: number) => (times === 1 || times > tick.most ? 0 : tickLines(times));
const timesWords = (times: number) => `× ${times}`;

function cellOf(pen: Pen, step: ToldStep): StepCell {
  const ends = countInWords(step.right - step.left + 1, 'end');
  const after = step.moves === null ? '' : movesInWords(step.moves);
  const number = pen.widthOf(countNumeral(step.turns), { face: 'strong', size: 18 });
  const words = Math.max(pen.widthOf(ends, { size: 8 }), pen.widthOf('turns', { size: 8 }));
  const ticks = step.turns > tick.most ? 0 : step.turns;
  return {
    step,
    ends,
    after,
    cellWidth: Math.max(number + 1.6 + words, tickWidth(ticks)) + 2.4,
    afterWidth: after === '' ? 0 : pen.widthOf(after, { size: 8 }) + 5,
    ticks,
    opens: 0,
    times: 1,
    closes: 0,
  };
}

/** The cells of steps told once, the first and the last with a bracket where they come more often. */
function cellsOf(pen: Pen, { steps, times }: StepRun): readonly StepCell[] {
  const cells = steps.map((step) => cellOf(pen, step));
  if (times === 1) return cells;
  const ticks = times > tick.most ? 0 : times;
  const said = pen.widthOf(timesWords(times), { face: 'strong', size: 12 });
  return cells.map((cell, at) => ({
    ...cell,
    ticks: 0,
    opens: at === 0 ? bracket : 0,
    ...(at === cells.length - 1 ? { times, closes: bracket + Math.max(said, tickWidth(ticks)) + 2.4 } : {}),
  }));
}

const widthOfCell = (cell: StepCell) => cell.opens + cell.cellWidth + cell.afterWidth + cell.closes;

const countNumeral = (count: number): string => countInWords(count, '', '').trim();

/** Squares to tick from a place on, ten to a line; the last is half as wide for half a turn. */
function drawTicks(pen: Pen, count: number, x: number, base: number): void {
  for (let at = 0; at < Math.ceil(count); at++) {
    const across = x + (at % tick.perLine) * tick.step;
    const down = base - 2 - tick.size - Math.floor(at / tick.perLine) * (tick.step + 0.3);
    const half = at + 1 > count;
    pen.box(across, down, half ? tick.size / 2 : tick.size, tick.size, null, { colour: palette.edge, width: 0.2 });
  }
}

function drawBracket(pen: Pen, x: number, base: number, inward: 1 | -1): void {
  const foot = base - 1.8;
  pen.path([[x + inward, base + 5.8, x, base + 5.8, x, foot, x + inward, foot]], false, null, {
    colour: palette.ink,
    width: 0.5,
  });
}

function drawCell(pen: Pen, cell: StepCell, left: number, top: number): void {
  const base = top - 6.4;
  const { step } = cell;
  if (cell.opens > 0) drawBracket(pen, left, base, 1);
  const x = left + cell.opens;
  const number = countNumeral(step.turns);
  pen.text(number, x, base, { face: 'strong', size: 18 });
  const beside = x + pen.widthOf(number, { face: 'strong', size: 18 }) + 1.6;
  pen.text(step.turns === 1 || step.turns === 0.5 ? 'turn' : 'turns', beside, base + 3.2, { size: 8 });
  pen.text(cell.ends, beside, base, { size: 8, colour: palette.second });
  drawTicks(pen, cell.ticks, x, base);
  const from = x + cell.cellWidth;
  if (cell.after !== '') {
    // The move: a step drawn as the edge makes it.
    pen.path([[from, base + 5.4, from, base - 1.2, from + cell.afterWidth - 2, base - 1.2]], false, null, {
      colour: palette.edge,
      width: 0.35,
    });
    pen.text(cell.after, from + 1.4, base + 0.4, { size: 8 });
  }
  if (cell.times === 1) return;
  const close = from + cell.afterWidth;
  drawBracket(pen, close, base, -1);
  pen.text(timesWords(cell.times), close + bracket, base, { face: 'strong', size: 12 });
  if (cell.times <= tick.most) drawTicks(pen, cell.times, close + bracket, base);
}

function textStrip(pen: Pen, words: string, width: number, colour = palette.ink): CardStrip[] {
  return pen.lines(words, width - indent, { size: 9.5 }).map((line) => ({
    height: 4.6,
    draw: (on, left, top) => on.text(line, left + indent, top - 3.4, { size: 9.5, colour }),
  }));
}

/** Joins, as a hand finds them: so many turns into the block. */
function joinWords(block: Block, plan: Plan): string | null {
  const joins = plan.joins.filter((join) => join.block === block.order);
  if (joins.length === 0) return null;
  const places = joins.map((join) => {
    const row = block.rows.findIndex((one) => one.pass === join.pass);
    return `in turn ${Math.floor(Math.max(0, row) / 2) + 1} at end ${join.end + 1}`;
  });
  return `Join new yarn ${places.join(', ')}.`;
}

/** Blocks that rise together with this one, by their numbers as printed. */
function togetherWords(block: Block, plan: Plan): string | null {
  const places = plan.sequence.flatMap((step, at) => (step.block === block.order ? [at] : []));
  if (places.length === 0) return null;
  const between = plan.sequence.slice(places[0], places.at(-1)! + 1);
  const others = [...new Set(between.map((step) => step.block))].filter((order) => order !== block.order);
  if (others.length === 0) return null;
  const numbers = listInWords(others.sort((one, other) => one - other).map((order) => order + 1));
  return `Rises together with ${others.length === 1 ? 'block' : 'blocks'} ${numbers}: weave them turn about, so that their wefts meet.`;
}

/** A block as strips from its head down: number, yarn, name; how it starts; its steps with squares to tick. */
export function blockCard(
  pen: Pen,
  piece: Piece,
  plan: Plan,
  block: Block,
  turns: readonly WorkTurn[],
  width: number,
): CardStrip[] {
  const yarn = piece.yarns[block.yarn];
  const { passHeight } = plan.chart;
  const low = Math.min(...block.rows.map((row) => row.pass)) * passHeight;
  const high = (Math.max(...block.rows.map((row) => row.pass)) + 1) * passHeight;
  const place = `${lengthInWords(low, piece.units)} to ${lengthInWords(high, piece.units)} up`;
  const strips: CardStrip[] = [
    {
      height: 9,
      draw: (on, left, top) => {
        on.line(left, top, left + width, top, { colour: palette.rule, width: 0.3 });
        on.text(String(block.order + 1), left, top - 6.8, { face: 'strong', size: 16 });
        if (yarn !== undefined) on.swatch(left + 12, top - 7.8, 6.4, yarn.colour, yarnLetter(block.yarn));
        on.text(on.speech.blockName(block.name), left + indent, top - 6.6, { face: 'heading', size: 14, own: true });
        const turnsInAll = countInWords(block.rows.length / 2, 'turn');
        on.text(turnsInAll, left + width, top - 6.4, { face: 'strong', size: 10, align: 'right' });
        const before = left + width - on.widthOf(turnsInAll, { face: 'strong', size: 10 }) - 4;
        on.text(place, before, top - 6.4, { size: 9, align: 'right', colour: palette.second });
      },
    },
  ];
  const [start = '', ...rest] = block.words;
  strips.push(...textStrip(pen, start, width));
  const cells = stepRuns(turns.filter((turn) => turn.block === block.order)).flatMap((run) => cellsOf(pen, run));
  if (cells.length > mostSteps) {
    for (const words of rest) strips.push(...textStrip(pen, words, width));
  } else {
    let line: StepCell[] = [];
    let used = 0;
    const flush = () => {
      if (line.length === 0) return;
      const drawn = line;
      const ticks = Math.max(...drawn.map((cell) => Math.max(tickLines(cell.ticks), repeatLines(cell.times))));
      strips.push({
        height: 9.4 + ticks * (tick.step + 0.3),
        draw: (on, left, top) => {
          let x = left + indent;
          for (const cell of drawn) {
            drawCell(on, cell, x, top);
            x += widthOfCell(cell);
          }
        },
      });
      line = [];
      used = 0;
    };
    for (const cell of cells) {
      if (used + widthOfCell(cell) > width - indent) flush();
      line.push(cell);
      used += widthOfCell(cell);
    }
    flush();
    const finish = rest.at(-1);
    if (finish !== undefined) strips.push(...textStrip(pen, finish, width, palette.second));
  }
  const together = togetherWords(block, plan);
  if (together !== null) strips.push(...textStrip(pen, together, width));
  const join = joinWords(block, plan);
  if (join !== null) strips.push(...textStrip(pen, join, width));
  for (const remark of block.remarks) strips.push(...textStrip(pen, remark, width, palette.second));
  strips.push({ height: 3, draw: () => undefined });
  return strips;
}
