import { box, disc, line, type Sheet, tint } from './sketch.ts';

/** Flat printed or ruled things. Each returns the body of an SVG. */

export function chessboard({ width, height, random }: Sheet): string {
  const cells = random.whole(5, 14);
  const cell = (Math.min(width, height) * random.between(0.6, 1.3)) / cells;
  const dark = tint(random, 0.05, 0.35);
  const light = tint(random, 0.7, 0.97);
  const left = (width - cell * cells) / 2;
  const top = (height - cell * cells) / 2;
  let body = box(left - cell / 2, top - cell / 2, cell * (cells + 1), cell * (cells + 1), light);
  for (let row = 0; row < cells; row++)
    for (let column = row % 2; column < cells; column += 2)
      body += box(left + column * cell, top + row * cell, cell, cell, dark);
  return body;
}

export function pageOfText({ width, height, random }: Sheet): string {
  const columns = random.pick([1, 1, 2, 3]);
  const lead = random.between(14, 38);
  const ink = tint(random, 0.05, 0.3);
  let body = box(width * 0.05, height * 0.03, width * 0.9, height * 0.94, '#f4f1ea');
  for (let column = 0; column < columns; column++) {
    const left = width * (0.1 + (0.8 * column) / columns);
    const right = width * (0.1 + (0.8 * (column + 0.92)) / columns);
    for (let y = height * 0.08; y < height * 0.92; y += lead) {
      if (random.chance(0.06)) continue;
      let x = left;
      while (x < right) {
        const letters = random.whole(1, 9);
        for (let letter = 0; letter < letters && x < right; letter++) {
          const wide = lead * random.between(0.18, 0.4);
          const tall = lead * random.pick([0.35, 0.35, 0.55]);
          body += box(x, y - tall, lead * 0.06, tall, ink);
          if (random.chance(0.7)) body += box(x, y - lead * 0.35, wide, lead * 0.06, ink);
          if (random.chance(0.5)) body += box(x + wide - lead * 0.06, y - lead * 0.35, lead * 0.06, lead * 0.35, ink);
          x += wide + lead * 0.1;
        }
        x += lead * 0.35;
      }
    }
  }
  return body;
}

export function musicStaves({ width, height, random }: Sheet): string {
  const gap = random.between(8, 18);
  let body = box(0, 0, width, height, '#f6f3ea');
  for (let y = height * 0.06; y < height * 0.94; y += gap * random.between(9, 12)) {
    for (let k = 0; k < 5; k++) body += line(width * 0.06, y + k * gap, width * 0.94, y + k * gap, '#222', gap * 0.12);
    for (let x = width * 0.1; x < width * 0.92; x += gap * random.between(2, 6)) {
      const at = y + gap * random.whole(0, 8) * 0.5;
      body +=
        disc(x, at, gap * 0.5, '#111') + line(x + gap * 0.45, at, x + gap * 0.45, at - gap * 3.2, '#111', gap * 0.13);
    }
  }
  return body;
}

export function graphPaper({ width, height, random }: Sheet): string {
  const step = random.between(9, 45);
  const ink = tint(random, 0.4, 0.75);
  let body = box(0, 0, width, height, '#f8f8f4');
  for (let k = 0; k * step < width; k++) body += line(k * step, 0, k * step, height, ink, k % 10 ? 1 : 2.5);
  for (let k = 0; k * step < height; k++) body += line(0, k * step, width, k * step, ink, k % 10 ? 1 : 2.5);
  return body;
}

export function ruledPad({ width, height, random }: Sheet): string {
  const step = random.between(18, 50);
  let body = box(width * 0.08, height * 0.04, width * 0.84, height * 0.92, '#fbf7dc');
  for (let y = height * 0.1; y < height * 0.94; y += step) body += line(width * 0.08, y, width * 0.92, y, '#7fa6cf', 2);
  body += line(width * 0.18, height * 0.04, width * 0.18, height * 0.96, '#d06a6a', 2.5);
  for (let k = 0; k < 22; k++) body += disc(width * 0.11 + k * width * 0.036, height * 0.065, 7, '#333');
  return body;
}

export function ruler({ width, height, random }: Sheet): string {
  let body = '';
  const rulers = random.whole(1, 4);
  for (let k = 0; k < rulers; k++) {
    const y = (height * (k + 0.5)) / rulers;
    const tall = height * random.between(0.06, 0.16);
    const step = random.between(5, 14);
    body += box(width * 0.03, y, width * 0.94, tall, tint(random, 0.6, 0.9));
    for (let n = 0; width * 0.05 + n * step < width * 0.95; n++)
      body += line(
        width * 0.05 + n * step,
        y,
        width * 0.05 + n * step,
        y + tall * (n % 10 ? (n % 5 ? 0.3 : 0.42) : 0.6),
        '#1a1a1a',
        step * 0.2,
      );
  }
  return body;
}

export function barcode({ width, height, random }: Sheet): string {
  const unit = random.between(3, 9);
  let body = box(width * 0.1, height * 0.2, width * 0.8, height * 0.6, '#fdfdfb');
  let x = width * 0.15;
  while (x < width * 0.85) {
    const wide = unit * random.whole(1, 4);
    body += box(x, height * 0.25, wide, height * 0.45, '#0c0c0c');
    x += wide + unit * random.whole(1, 4);
  }
  return body;
}

export function calendar({ width, height, random }: Sheet): string {
  const columns = random.pick([7, 7, 12, 31]);
  const rows = random.whole(4, 20);
  const ink = tint(random, 0.1, 0.5);
  let body = box(width * 0.06, height * 0.06, width * 0.88, height * 0.88, '#fafaf7');
  for (let k = 0; k <= columns; k++) {
    const x = width * (0.08 + (0.84 * k) / columns);
    body += line(x, height * 0.15, x, height * 0.92, ink, 2);
  }
  for (let k = 0; k <= rows; k++) {
    const y = height * (0.15 + (0.77 * k) / rows);
    body += line(width * 0.08, y, width * 0.92, y, ink, 2);
  }
  return body;
}
