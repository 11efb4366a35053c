import type { Piece } from '../../../core/model/piece.ts';
import { plannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import type { Words } from '../../words/en.ts';
import type { Look } from './checkStore.ts';
import { flagTitle } from './FlagList.tsx';
import { flagFigure, flagPlace } from './flagFigure.ts';
import {
  measuredCloth,
  measuredStrings,
  type Project,
  plannedOutline,
  plannedShapes,
  plannedStrings,
} from './overlayPaths.ts';

/** A rectangle of cloth, mm, and how finely it is drawn. */
export interface ShareFrame {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly pxPerMm: number;
}

const LONGEST_PX = 1_800;
const FACE = '"Atkinson Hyperlegible Next Variable", system-ui, sans-serif';
const HEADING = '"Brygada 1918 Variable", Georgia, serif';
const [INK, SHEET, SECOND] = ['#171d20', '#f5f7f5', '#465256'];

/** The whole piece with some loom round it. */
export function shareFrame(piece: Piece, look: Look): ShareFrame {
  const edges = plannedSelvedges(piece, look.reading.selvedge);
  const [left, right, bottom, top] = [edges.left - 30, edges.right + 30, -25, piece.cloth.height + 25];
  return { left, right, bottom, top, pxPerMm: Math.min(8, LONGEST_PX / Math.max(right - left, top - bottom)) };
}

/** Words broken into lines no wider than `width`. */
function linesOf(pen: CanvasRenderingContext2D, text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && pen.measureText(longer).width <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function drawOverlay(
  pen: CanvasRenderingContext2D,
  piece: Piece,
  look: Look,
  marked: readonly number[],
  project: Project,
): void {
  const edges = plannedSelvedges(piece, look.reading.selvedge);
  const { reading } = look;
  const topY = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
  const plan = new Path2D(
    plannedOutline(edges, piece.cloth.height, project) +
      plannedShapes(piece, edges, project) +
      plannedStrings(reading, piece, project, marked),
  );
  const cloth = new Path2D(
    measuredCloth(reading, piece.loom.notchPitch / 2, project) + measuredStrings(reading, topY, project, marked),
  );
  const stroke = (path: Path2D, colour: string, width: number, dash: readonly number[] = []) => {
    pen.setLineDash([...dash]);
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.stroke(path);
  };
  pen.lineJoin = 'round';
  stroke(plan, 'rgb(10 18 32 / 60%)', 8.4);
  stroke(plan, '#ffffff', 6);
  stroke(plan, '#174a94', 3.6, [13.5, 7.5]);
  stroke(cloth, 'rgb(255 255 255 / 55%)', 10.5);
  stroke(cloth, '#140d02', 8.1);
  stroke(cloth, '#ffb03a', 3.9);
}

/** How near a label's middle may come to the picture's border, px. */
const LABEL = 36;

/** A label of white on ink beside the place it speaks of, kept inside the picture. */
function drawLabel(pen: CanvasRenderingContext2D, text: string, at: { x: number; y: number }, width: number): void {
  pen.font = `700 28px ${FACE}`;
  const breadth = pen.measureText(text).width + 24;
  const toLeft = at.x + 24 + breadth > width;
  const x = toLeft ? at.x - 24 - breadth : at.x + 24;
  pen.fillStyle = '#ffffff';
  pen.fillRect(x - 2, at.y - 24, breadth + 4, 48);
  pen.fillRect(toLeft ? at.x - 24 : at.x, at.y - 2.5, 24, 5);
  pen.fillStyle = '#101518';
  pen.fillRect(x, at.y - 22, breadth, 44);
  pen.fillRect(at.x - 5, at.y - 5, 10, 10);
  pen.fillStyle = '#ffffff';
  pen.fillText(text, x + 12, at.y);
}

interface ShareText {
  readonly title: string;
  readonly sentence: string;
  readonly words: Words['check'];
}

/**
 * The photograph seen front-on with plan, cloth and figures drawn into it, to be sent to somebody. It is drawn anew, so
 * nothing the camera wrote into the photograph (place, time, device) is in it.
 * @param picture the front-on picture of `frame`.
 */
export async function sharePicture(
  picture: Blob,
  frame: ShareFrame,
  piece: Piece,
  look: Look,
  { title, sentence, words }: ShareText,
): Promise<Blob | null> {
  const image = await createImageBitmap(picture);
  await document.fonts.ready;
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  const { width, height } = image;
  const margin = 36;
  const text = (words: string, font: string) => {
    pen.font = font;
    return { font, lines: linesOf(pen, words, width - 2 * margin) };
  };
  const edges = plannedSelvedges(piece, look.reading.selvedge);
  const put = look.kept?.dismissed.map((each) => each.flag) ?? [];
  const flags = look.reading.flags.map((flag, index) => ({ flag, index })).filter(({ index }) => !put.includes(index));
  const said = flags.map(({ flag, index }) => {
    const figure = flagFigure(flag, piece.units);
    const size = figure === null ? '' : ` ${figure.figure}, ${figure.giveOrTake}.`;
    return text(`${index + 1}  ${flagTitle(flag, piece.units)}.${size}`, `450 30px ${FACE}`);
  });
  const paragraphs = [
    text(title, `600 44px ${HEADING}`),
    text(sentence, `450 34px ${FACE}`),
    ...said,
    text(words.shareLegend, `450 26px ${FACE}`),
    ...(look.rendered ? [text(words.shareRendered, `450 26px ${FACE}`)] : []),
  ];
  const lineHeight = (font: string) => 1.3 * Number(/(\d+)px/.exec(font)?.[1] ?? 30);
  const below = paragraphs.reduce((sum, { font, lines }) => sum + lines.length * lineHeight(font) + 10, 2 * margin);
  canvas.width = width;
  canvas.height = Math.ceil(height + below);
  pen.fillStyle = SHEET!;
  pen.fillRect(0, 0, width, canvas.height);
  pen.drawImage(image, 0, 0);
  const project: Project = (x, y) => ({ x: (x - frame.left) * frame.pxPerMm, y: (frame.top - y) * frame.pxPerMm });
  pen.save();
  pen.beginPath();
  pen.rect(0, 0, width, height);
  pen.clip();
  drawOverlay(
    pen,
    piece,
    look,
    flags.flatMap(({ flag }) => flag.ends),
    project,
  );
  pen.setLineDash([]);
  pen.textBaseline = 'middle';
  for (const { flag, index } of flags) {
    const place = flagPlace(flag, look.reading, edges);
    if (place === null) continue;
    const figure = flagFigure(flag, piece.units);
    // A string's middle may lie above the picture: its label waits at the border.
    const { x, y: wanted } = project(place.x, place.y);
    const at = { x, y: Math.min(Math.max(wanted, LABEL), height - LABEL) };
    drawLabel(pen, figure === null ? `${index + 1}` : `${index + 1}  ${figure.figure} ± ${figure.spread}`, at, width);
  }
  pen.restore();
  pen.textBaseline = 'top';
  let y = height + margin;
  for (const { font, lines } of paragraphs) {
    pen.font = font;
    pen.fillStyle = font.includes('26px') ? SECOND! : INK!;
    for (const line of lines) {
      pen.fillText(line, margin, y);
      y += lineHeight(font);
    }
    y += 10;
  }
  return new Promise((made) => canvas.toBlob(made, 'image/jpeg', 0.92));
}
