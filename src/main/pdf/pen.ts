import {
  clip,
  concatTransformationMatrix,
  degrees,
  endPath,
  type PDFImage,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  type RGB,
  rectangle,
} from 'pdf-lib';
import { letterColour } from '../../core/colour/contrast.ts';
import { boxOfRings } from '../../core/geometry/box.ts';
import type { Face } from '../typefaces/fontFiles.ts';
import { ink, palette } from './palette.ts';
import { runsOf, type Typefaces } from './typefaces.ts';

/** Points, the unit of a page, in a millimetre: 72 to the inch. */
export const POINTS_PER_MM = 72 / 25.4;

/** How a sheet speaks: what the core says, and the names it gives blocks. */
export interface Speech {
  readonly tell: (words: string) => string;
  readonly blockName: (name: string) => string;
}

export interface Stroke {
  readonly colour?: RGB;
  /** mm. */
  readonly width?: number;
  /** Lengths of dashes and gaps in turn, mm. */
  readonly dash?: readonly number[];
}
export interface TextStyle {
  readonly face?: Face;
  /** Points, as type is measured. */
  readonly size?: number;
  readonly colour?: RGB;
  readonly align?: 'left' | 'middle' | 'right';
  /** The weaver's own words: a name or a note, never told in another language. */
  readonly own?: boolean;
  /** Degrees anticlockwise. */
  readonly turn?: number;
}

/** What can be seen of the drawing, mm. */
interface Window {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/**
 * Draws on one page in millimetres, origin at the page's lower left corner, y up. What it writes it says in the sheet's
 * language; told twice, words stay as they are.
 */
export class Pen {
  /** Set inside a frame: what lies wholly past it is never put into the file. */
  private window: Window | null = null;

  constructor(
    readonly page: PDFPage,
    readonly faces: Typefaces,
    readonly speech: Speech,
  ) {}

  private said(text: string, style: TextStyle): string {
    return style.own ? text : this.speech.tell(text);
  }

  private hidden(x0: number, y0: number, x1: number, y1: number, margin: number): boolean {
    const seen = this.window;
    if (seen === null) return false;
    return (
      Math.max(x0, x1) < seen.left - margin ||
      Math.min(x0, x1) > seen.right + margin ||
      Math.max(y0, y1) < seen.bottom - margin ||
      Math.min(y0, y1) > seen.top + margin
    );
  }

  widthOf(text: string, style: TextStyle = {}): number {
    const { face = 'plain', size = 10 } = style;
    let points = 0;
    for (const run of runsOf(this.faces, face, this.said(text, style)))
      points += run.font.widthOfTextAtSize(run.text, size * run.scale);
    return points / POINTS_PER_MM;
  }

  /** One line of text with its baseline at y. */
  text(text: string, x: number, y: number, style: TextStyle = {}): void {
    const { face = 'plain', size = 10, colour = palette.ink, align = 'left', turn = 0 } = style;
    if (this.hidden(x, y, x, y, 100)) return;
    const width = this.widthOf(text, style);
    if (this.hidden(x, y, x, y, width + size)) return;
    const back = align === 'left' ? 0 : align === 'middle' ? width / 2 : width;
    const cosine = Math.cos((turn * Math.PI) / 180);
    const sine = Math.sin((turn * Math.PI) / 180);
    let along = -back;
    for (const run of runsOf(this.faces, face, this.said(text, style))) {
      this.page.drawText(run.text, {
        x: (x + along * cosine) * POINTS_PER_MM - run.rise * size * sine,
        y: (y + along * sine) * POINTS_PER_MM + run.rise * size * cosine,
        size: size * run.scale,
        font: run.font,
        color: colour,
        rotate: degrees(turn),
      });
      along += run.font.widthOfTextAtSize(run.text, size * run.scale) / POINTS_PER_MM;
    }
  }

  /** Text broken into lines no wider than `width` mm; a word longer than that has a line to itself. */
  lines(text: string, width: number, style: TextStyle = {}): string[] {
    const lines: string[] = [];
    let line = '';
    const told = { ...style, own: true };
    for (const word of this.said(text, style).split(/ +/)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && this.widthOf(longer, told) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    if (line !== '') lines.push(line);
    return lines;
  }

  line(x0: number, y0: number, x1: number, y1: number, stroke: Stroke = {}): void {
    const { colour = palette.ink, width = 0.3, dash } = stroke;
    if (this.hidden(x0, y0, x1, y1, width)) return;
    this.page.drawLine({
      start: { x: x0 * POINTS_PER_MM, y: y0 * POINTS_PER_MM },
      end: { x: x1 * POINTS_PER_MM, y: y1 * POINTS_PER_MM },
      thickness: width * POINTS_PER_MM,
      color: colour,
      ...(dash === undefined ? {} : { dashArray: dash.map((length) => length * POINTS_PER_MM) }),
    });
  }

  box(x: number, y: number, width: number, height: number, fill: RGB | null, stroke: Stroke | null = null): void {
    this.page.drawRectangle({
      x: x * POINTS_PER_MM,
      y: y * POINTS_PER_MM,
      width: width * POINTS_PER_MM,
      height: height * POINTS_PER_MM,
      ...(fill === null ? {} : { color: fill }),
      ...(stroke === null
        ? { borderWidth: 0 }
        : {
            borderColor: stroke.colour ?? palette.ink,
            borderWidth: (stroke.width ?? 0.3) * POINTS_PER_MM,
            ...(stroke.dash === undefined ? {} : { borderDashArray: stroke.dash.map((one) => one * POINTS_PER_MM) }),
          }),
    });
  }

  circle(x: number, y: number, radius: number, fill: RGB | null, stroke: Stroke | null = null): void {
    this.page.drawCircle({
      x: x * POINTS_PER_MM,
      y: y * POINTS_PER_MM,
      size: radius * POINTS_PER_MM,
      ...(fill === null ? {} : { color: fill }),
      ...(stroke === null
        ? { borderWidth: 0 }
        : { borderColor: stroke.colour ?? palette.ink, borderWidth: (stroke.width ?? 0.3) * POINTS_PER_MM }),
    });
  }

  /** Rings or lines through points, x, y, x, y … in mm. */
  path(rings: readonly ArrayLike<number>[], closed: boolean, fill: RGB | null, stroke: Stroke | null): void {
    let data = '';
    const number = (value: number) => (value * POINTS_PER_MM).toFixed(3);
    for (const ring of rings) {
      const box = boxOfRings([Float64Array.from(ring)]);
      if (box === null || this.hidden(box.left, box.bottom, box.right, box.top, 2)) continue;
      for (let at = 0; at + 1 < ring.length; at += 2) {
        // The library draws SVG paths, whose y runs down.
        data += `${at === 0 ? 'M' : 'L'}${number(ring[at]!)} ${number(-ring[at + 1]!)}`;
      }
      if (closed) data += 'Z';
    }
    if (data === '') return;
    this.page.drawSvgPath(data, {
      x: 0,
      y: 0,
      ...(fill === null ? {} : { color: fill }),
      ...(stroke === null
        ? {}
        : {
            borderColor: stroke.colour ?? palette.ink,
            borderWidth: (stroke.width ?? 0.3) * POINTS_PER_MM,
            ...(stroke.dash === undefined ? {} : { borderDashArray: stroke.dash.map((one) => one * POINTS_PER_MM) }),
          }),
    });
  }

  /** Draws with the page's frame moved so that (x, y) of the drawing lies at (left, bottom), and nothing past the rim. */
  inFrame(left: number, bottom: number, width: number, height: number, x: number, y: number, draw: () => void): void {
    const p = POINTS_PER_MM;
    this.page.pushOperators(
      pushGraphicsState(),
      rectangle(left * p, bottom * p, width * p, height * p),
      clip(),
      endPath(),
      concatTransformationMatrix(1, 0, 0, 1, (left - x) * p, (bottom - y) * p),
    );
    const before = this.window;
    this.window = { left: x, right: x + width, bottom: y, top: y + height };
    if (before !== null) {
      const [dx, dy] = [x - left, y - bottom];
      this.window = {
        left: Math.max(this.window.left, before.left + dx),
        right: Math.min(this.window.right, before.right + dx),
        bottom: Math.max(this.window.bottom, before.bottom + dy),
        top: Math.min(this.window.top, before.top + dy),
      };
    }
    draw();
    this.window = before;
    this.page.pushOperators(popGraphicsState());
  }

  image(image: PDFImage, x: number, y: number, width: number, height: number): void {
    this.page.drawImage(image, {
      x: x * POINTS_PER_MM,
      y: y * POINTS_PER_MM,
      width: width * POINTS_PER_MM,
      height: height * POINTS_PER_MM,
    });
  }

  /** A yarn: its colour and its letter, so that colour is never the only sign. Lower left corner at (x, y). */
  swatch(x: number, y: number, size: number, colour: string, letter: string): void {
    this.box(x, y, size, size, ink(colour), { colour: palette.edge, width: 0.25 });
    const points = (size * POINTS_PER_MM * 0.62) / Math.max(1, letter.length * 0.62);
    this.text(letter, x + size / 2, y + size / 2 - (points * 0.34) / POINTS_PER_MM, {
      face: 'strong',
      size: points,
      colour: ink(letterColour(colour)),
      align: 'middle',
      own: true,
    });
  }
}
