import { BARE, type Chart } from '../../core/model/plan.ts';

/** The chart as a small picture, one pixel a cell, the first pass at its foot. */
export function cellImage(chart: Chart, colours: readonly string[]): OffscreenCanvas {
  const { ends, passes, cells } = chart;
  const picture = new OffscreenCanvas(ends, passes);
  const context = picture.getContext('2d');
  if (!context) return picture;
  const image = context.createImageData(ends, passes);
  const pixels = new Uint32Array(image.data.buffer);
  const inks = new Uint32Array(256);
  for (const [yarn, colour] of colours.entries()) {
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
    inks[yarn] = ((255 << 24) | (b! << 16) | (g! << 8) | r!) >>> 0;
  }
  inks[BARE] = 0;
  for (let pass = 0; pass < passes; pass++) {
    const row = (passes - 1 - pass) * ends;
    for (let end = 0; end < ends; end++) pixels[row + end] = inks[cells[pass * ends + end]!]!;
  }
  context.putImageData(image, 0, 0);
  return picture;
}
