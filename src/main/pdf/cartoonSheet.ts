import type { Piece } from '../../core/model/piece.ts';
import type { Chart } from '../../core/model/plan.ts';
import { chartOutlines } from '../../core/report/chartOutlines.ts';
import type { PaperName } from '../../core/report/paper.ts';
import { type Tile, type Tiling, tilePages } from '../../core/report/tilePages.ts';
import { yarnLetter } from '../../core/report/yarnLetter.ts';
import type { LanguageName } from '../../core/words/telling.ts';
import { cartoonMargins, cartoonParts, drawCartoon, drawEndNumbers } from './cartoonDrawing.ts';
import { checkBarWords, drawCheckBar } from './checkBar.ts';
import { newSheet } from './newSheet.ts';
import { palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** A cross in a ring, to lay the same mark of the next page on. */
function registrationMark(pen: Pen, x: number, y: number): void {
  pen.circle(x, y, 1.6, null, { width: 0.2 });
  pen.line(x - 3, y, x + 3, y, { width: 0.2 });
  pen.line(x, y - 3, x, y + 3, { width: 0.2 });
}

/** Seams with the neighbouring pages: a dotted line to cut along, marks on it, and the neighbour's name. */
function drawSeams(pen: Pen, tiling: Tiling, tile: Tile): void {
  const { frame, overlap, rows, columns } = tiling;
  const right = frame.left + frame.width;
  const top = frame.bottom + frame.height;
  const dots = { colour: palette.edge, width: 0.25, dash: [0.6, 1.4] };
  const upright = (x: number, neighbour: string, inwards: number) => {
    pen.line(x, frame.bottom, x, top, dots);
    for (const share of [1 / 6, 5 / 6]) registrationMark(pen, x, frame.bottom + share * frame.height);
    pen.text(neighbour, x + inwards, frame.bottom + 2, { size: 7, turn: 90, colour: palette.second });
  };
  const level = (y: number, neighbour: string, inwards: number) => {
    pen.line(frame.left, y, right, y, dots);
    for (const share of [1 / 6, 5 / 6]) registrationMark(pen, frame.left + share * frame.width, y);
    pen.text(neighbour, frame.left + 1, y + inwards, { size: 7, colour: palette.second });
  };
  const half = overlap / 2;
  if (tile.column > 1) upright(frame.left + half, `to row ${tile.row}, column ${tile.column - 1}`, -1.2);
  if (tile.column < columns) upright(right - half, `to row ${tile.row}, column ${tile.column + 1}`, 3.4);
  if (tile.row > 1) level(frame.bottom + half, `to row ${tile.row - 1}, column ${tile.column}`, -3.4);
  if (tile.row < rows) level(top - half, `to row ${tile.row + 1}, column ${tile.column}`, 1.4);
}

/** A small map of the pages with this one filled; lower right corner at (x, y). */
function drawMap(pen: Pen, tiling: Tiling, tile: Tile, x: number, y: number): void {
  const size = Math.min(4, 12 / Math.max(tiling.rows, tiling.columns));
  for (const other of tiling.tiles) {
    const here = other.row === tile.row && other.column === tile.column;
    const left = x - (tiling.columns - other.column + 1) * size;
    pen.box(left, y + (other.row - 1) * size, size, size, here ? palette.ink : palette.white, { width: 0.2 });
  }
}

function drawFoot(pen: Pen, piece: Piece, tiling: Tiling, tile: Tile): void {
  const { frame } = tiling;
  const y = frame.bottom - 19;
  drawCheckBar(pen, frame.left, y + 4, piece.units);
  pen.text(`Lay a ruler on the bar: at actual size (100 %) it is ${checkBarWords(piece.units)}.`, frame.left, y, {
    size: 7.5,
    colour: palette.second,
  });
  const right = frame.left + frame.width;
  drawMap(pen, tiling, tile, right, y);
  const words = right - 4 * Math.min(4, tiling.columns) - 3;
  pen.text(piece.name, words, y + 9, { face: 'heading', size: 12, align: 'right', own: true });
  pen.text(`row ${tile.row}, column ${tile.column}`, words, y + 4.6, { face: 'strong', size: 9, align: 'right' });
  pen.text(`of ${tiling.rows} × ${tiling.columns}; row 1 is the lowest`, words, y, {
    size: 7.5,
    align: 'right',
    colour: palette.second,
  });
}

/** What the lines and letters mean, in the free strip above the drawing or, failing that, on a page of its own. */
function drawLegend(pen: Pen, piece: Piece, left: number, top: number, width: number): void {
  let y = top - 4;
  const say = (draw: () => void, words: string) => {
    draw();
    for (const line of pen.lines(words, width - 18, { size: 9 })) {
      pen.text(line, left + 18, y, { size: 9 });
      y -= 4.6;
    }
    y -= 1.6;
  };
  pen.text(piece.name, left, y, { face: 'heading', size: 20, own: true });
  y -= 7;
  pen.text('Cartoon, true to size, to slip behind the warp', left, y, { size: 10, colour: palette.second });
  y -= 9;
  say(
    () => pen.line(left, y + 1, left + 14, y + 1, { colour: palette.plan, width: 0.5, dash: [2.4, 1.5] }),
    'the line as drawn',
  );
  say(() => pen.line(left, y + 1, left + 14, y + 1, { width: 0.35 }), 'the edge as woven, in whole turns and ends');
  for (const [index, yarn] of piece.yarns.entries()) {
    say(() => pen.swatch(left, y - 0.9, 5, yarn.colour, yarnLetter(index)), yarn.name);
  }
  y -= 2;
  for (const words of [
    'Print at actual size; do not let the printer fit the page. Check the bar on every page with a ruler.',
    'Cut one of two neighbouring pages along the dotted line, lay its marks on the marks of the other, and glue.',
    'Lay the foot of the drawing on the top of the twining and end 1 behind the leftmost string.',
    'Cut away from your hand, on a mat, and put the blade away before you reach round the loom.',
  ]) {
    for (const line of pen.lines(words, width, { size: 9 })) {
      pen.text(line, left, y, { size: 9 });
      y -= 4.6;
    }
    y -= 1.8;
  }
}

/**
 * The cartoon at true size on as many pages as it takes, with a first page that says how to put them together.
 * @returns a PDF; the same piece and paper always give the same bytes.
 */
export async function cartoonSheet(
  piece: Piece,
  chart: Chart,
  paper: PaperName,
  language: LanguageName,
): Promise<Uint8Array> {
  const sheet = await newSheet(piece, 'cartoon', [], language);
  const width = chart.ends * chart.pitch + cartoonMargins.left + cartoonMargins.right;
  const height = chart.passes * chart.passHeight + cartoonMargins.bottom + cartoonMargins.top;
  const tiling = tilePages(width, height, paper);
  const originX = (-chart.ends * chart.pitch) / 2 - cartoonMargins.left;
  const originY = -cartoonMargins.bottom;
  const { frame } = tiling;

  const cover = sheet.addPage(tiling.paper.width, tiling.paper.height);
  const coverTop = tiling.paper.height - 16;
  drawLegend(cover, piece, 18, coverTop, 82);
  drawWholeMap(cover, piece, chart, tiling, { originX, originY, width, height });

  const parts = cartoonParts(piece, chart);
  for (const tile of tiling.tiles) {
    const pen = sheet.addPage(tiling.paper.width, tiling.paper.height);
    const x = originX + tile.left;
    const y = originY + tile.bottom;
    const inset = tiling.overlap;
    const shown = { left: x + inset, right: x + frame.width - inset, bottom: y + inset, top: y + frame.height - inset };
    pen.inFrame(frame.left, frame.bottom, frame.width, frame.height, x, y, () => drawCartoon(pen, parts, shown));
    // Where the foot of the cloth is on another page, the ends are numbered again along this page's own foot.
    if (tile.row > 1) {
      const strip = tiling.overlap + 1;
      pen.inFrame(frame.left, frame.bottom, frame.width, frame.height, x, y, () => {
        drawEndNumbers(pen, chart, y + strip, 6.5);
      });
    }
    drawSeams(pen, tiling, tile);
    drawFoot(pen, piece, tiling, tile);
  }
  return sheet.bytes();
}

/** The whole drawing small, with the pages laid over it. */
function drawWholeMap(
  pen: Pen,
  piece: Piece,
  chart: Chart,
  tiling: Tiling,
  drawing: { readonly originX: number; readonly originY: number; readonly width: number; readonly height: number },
): void {
  const { frame, overlap } = tiling;
  const across = tiling.columns * (frame.width - overlap) + overlap;
  const up = tiling.rows * (frame.height - overlap) + overlap;
  const room = { left: 112, width: tiling.paper.width - 112 - 12, height: tiling.paper.height - 40 };
  const scale = Math.min(room.width / across, room.height / up);
  const top = tiling.paper.height - 14;
  const place = (x: number, y: number) => ({
    x: room.left + (x - tiling.tiles[0]!.left) * scale,
    y: top - up * scale + (y - tiling.tiles[0]!.bottom) * scale,
  });
  const half = (chart.ends * chart.pitch) / 2;
  for (const edge of chartPieces(chart)) {
    const from = place(edge[0] - half - drawing.originX, edge[1] - drawing.originY);
    const to = place(edge[2] - half - drawing.originX, edge[3] - drawing.originY);
    pen.line(from.x, from.y, to.x, to.y, { width: 0.25 });
  }
  const foot = place(-half - drawing.originX, -drawing.originY);
  pen.box(foot.x, foot.y, 2 * half * scale, chart.passes * chart.passHeight * scale, null, { width: 0.35 });
  for (const tile of tiling.tiles) {
    const corner = place(tile.left, tile.bottom);
    pen.box(corner.x, corner.y, frame.width * scale, frame.height * scale, null, {
      colour: palette.edge,
      width: 0.25,
      dash: [1.2, 1],
    });
    const words = `${tile.row}, ${tile.column}`;
    const [x, y] = [corner.x + (frame.width * scale) / 2, corner.y + (frame.height * scale) / 2];
    pen.box(x - 6, y - 2.6, 12, 6, palette.white, { colour: palette.edge, width: 0.2 });
    pen.text(words, x, y - 0.9, { face: 'strong', size: 9, align: 'middle' });
  }
  pen.text(`Pages by row and column, ${piece.name} at 1 : ${(1 / scale).toFixed(1)}`, room.left, top - up * scale - 5, {
    size: 8,
    colour: palette.second,
  });
}

const chartPieces = (chart: Chart): [number, number, number, number][] =>
  chartOutlines(chart, (cell) => chart.cells[cell]!).map((edge) => [
    edge.fromEnd * chart.pitch,
    edge.fromPass * chart.passHeight,
    edge.toEnd * chart.pitch,
    edge.toPass * chart.passHeight,
  ]);
