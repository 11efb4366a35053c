import type { Piece } from '../../core/model/piece.ts';
import { type PaperName, papers } from '../../core/report/paper.ts';
import type { Sheet } from './newSheet.ts';
import { palette } from './palette.ts';
import type { Pen, TextStyle } from './pen.ts';

const margin = { left: 18, right: 18, top: 16, bottom: 20 };

/** Text and drawings that run down a page and on to the next. `y` is the upper edge of what is still free, mm. */
export class Flow {
  readonly left = margin.left;
  readonly width: number;
  readonly bottom = margin.bottom;
  private readonly size: { readonly width: number; readonly height: number };
  private readonly pens: Pen[] = [];
  y = 0;
  pen: Pen;

  constructor(
    private readonly sheet: Sheet,
    private readonly piece: Piece,
    private readonly title: string,
    paper: PaperName,
  ) {
    this.size = papers[paper];
    this.width = this.size.width - margin.left - margin.right;
    this.pen = this.newPage();
  }

  get top(): number {
    return this.size.height - margin.top;
  }
  get right(): number {
    return this.left + this.width;
  }
  /** Height still free on this page, mm. */
  get room(): number {
    return this.y - this.bottom;
  }

  newPage(): Pen {
    this.pen = this.sheet.addPage(this.size.width, this.size.height);
    this.pens.push(this.pen);
    this.y = this.top;
    return this.pen;
  }

  /** Goes on to a new page unless so much height is free, mm. */
  need(height: number): void {
    if (this.room < height) this.newPage();
  }

  skip(height: number): void {
    this.y -= height;
  }

  /** The name of the sheet and one sentence under it. */
  head(title: string, sentence: string): void {
    this.pen.text(title, this.left, this.y - 6, { face: 'heading', size: 22, own: title === this.piece.name });
    this.y -= 12;
    this.say(sentence, { size: 11, colour: palette.second });
    this.y -= 3;
  }

  heading(words: string): void {
    this.need(22);
    this.y -= 3;
    this.pen.text(words, this.left, this.y - 4, { face: 'heading', size: 14 });
    this.y -= 8;
  }

  rule(): void {
    this.pen.line(this.left, this.y, this.right, this.y, { colour: palette.rule, width: 0.3 });
  }

  /** A paragraph, broken into lines. @param indent mm from the left edge. */
  say(words: string, style: TextStyle = {}, indent = 0, width = this.width - indent): void {
    const size = style.size ?? 10;
    const step = size * 0.49;
    for (const line of this.pen.lines(words, width, style)) {
      this.need(step);
      this.pen.text(line, this.left + indent, this.y - size * 0.36, { ...style, size });
      this.y -= step;
    }
  }

  /** Numbered or marked points, one under another. */
  points(words: readonly string[], mark: (index: number) => string): void {
    for (const [index, one] of words.entries()) {
      this.need(this.pen.lines(one, this.width - 8).length * 4.9);
      this.pen.text(mark(index), this.left, this.y - 3.6, { face: 'strong', size: 10 });
      this.say(one, {}, 8);
      this.y -= 1.6;
    }
  }

  /** Cautions where hands can be hurt, set apart by a bar at the left. */
  caution(words: readonly string[]): void {
    const lines = words.map((one) => this.pen.lines(one, this.width - 6, { size: 9.5 }).length);
    this.need(lines.reduce((sum, count) => sum + count * 4.7 + 1, 6));
    const from = this.y;
    this.pen.text('Take care', this.left + 6, this.y - 4, { face: 'strong', size: 10 });
    this.y -= 6;
    for (const one of words) {
      this.say(one, { size: 9.5 }, 6);
      this.y -= 1;
    }
    this.pen.box(this.left, this.y, 1.2, from - this.y, palette.ink);
    this.y -= 3;
  }

  /** Page numbers and names at the foot of every page; call when all is drawn. */
  finish(): void {
    for (const [index, pen] of this.pens.entries()) {
      pen.line(this.left, 14, this.right, 14, { colour: palette.rule, width: 0.3 });
      const name = `${this.piece.name}, ${pen.speech.tell(this.title)}`;
      pen.text(name, this.left, 9.6, { size: 8.5, colour: palette.second, own: true });
      pen.text(`page ${index + 1} of ${this.pens.length}`, this.right, 9.6, {
        size: 8.5,
        colour: palette.second,
        align: 'right',
      });
    }
  }
}
