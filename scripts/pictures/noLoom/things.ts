import { box, disc, line, type Sheet, timber, tint } from './sketch.ts';

/** Things with many straight, evenly set lines that a careless eye could take for a warp. */

export function fence({ width, height, random }: Sheet): string {
  const pitch = random.between(18, 90);
  const wide = pitch * random.between(0.4, 0.85);
  const wood = timber(random);
  let body = box(0, 0, width, height * 0.4, '#a9c4dd') + box(0, height * 0.4, width, height, '#6c8a4d');
  const top = height * random.between(0.1, 0.3);
  const foot = height * random.between(0.75, 0.95);
  for (const y of [0.3, 0.75]) body += box(0, top + (foot - top) * y, width, pitch * 0.35, timber(random));
  for (let x = -pitch; x < width + pitch; x += pitch) {
    body += box(x, top, wide, foot - top, wood);
    if (random.chance(0.9))
      body += `<path d="M${x} ${top} l${wide / 2} ${-wide * 0.6} l${wide / 2} ${wide * 0.6} z" fill="${wood}"/>`;
  }
  return body;
}

export function blinds({ width, height, random }: Sheet): string {
  const pitch = random.between(12, 60);
  const lit = tint(random, 0.6, 0.95);
  const shade = tint(random, 0.2, 0.6);
  let body = box(width * 0.05, height * 0.05, width * 0.9, height * 0.9, shade);
  for (let y = height * 0.06; y < height * 0.93; y += pitch)
    body += box(width * 0.07, y, width * 0.86, pitch * 0.78, lit);
  for (const x of [0.2, 0.5, 0.8]) body += line(width * x, height * 0.06, width * x, height * 0.94, '#eee', 3);
  return body;
}

export function corduroy({ width, height, random }: Sheet): string {
  const pitch = random.between(6, 26);
  const cloth = tint(random, 0.25, 0.7);
  let body = box(-width, -height, width * 3, height * 3, cloth);
  for (let x = -width / 2; x < width * 1.5; x += pitch) {
    body += box(x, -height, pitch * 0.35, height * 3, '#000', 'opacity="0.3"');
    body += box(x + pitch * 0.5, -height, pitch * 0.25, height * 3, '#fff', 'opacity="0.18"');
  }
  return body;
}

export function brickWall({ width, height, random }: Sheet): string {
  const tall = random.between(24, 70);
  const long = tall * random.between(2, 3.4);
  let body = box(-width, -height, width * 3, height * 3, tint(random, 0.55, 0.8));
  for (let row = -4; row * tall < height + 4 * tall; row++)
    for (let x = (row % 2 ? -long / 2 : 0) - long * 2; x < width + long * 2; x += long)
      body += box(x + 3, row * tall + 3, long - 6, tall - 6, random.pick(['#9c4f3a', '#a8593f', '#8a4433', '#b06a4d']));
  return body;
}

export function keyboard({ width, height, random }: Sheet): string {
  const key = random.between(40, 85);
  const dark = random.chance(0.5);
  let body = box(width * 0.02, height * 0.2, width * 0.96, height * 0.6, dark ? '#1c1c1f' : '#d8d8d4', 'rx="14"');
  for (let row = 0; row < Math.floor((height * 0.56) / key); row++) {
    let x = width * 0.04 + (row % 2 ? key * 0.25 : 0);
    while (x < width * 0.94 - key) {
      const wide = key * random.pick([1, 1, 1, 1, 1.5]);
      body += box(x, height * 0.22 + row * key, wide - 6, key - 6, dark ? '#33343a' : '#f7f7f4', 'rx="6"');
      body += box(
        x + wide * 0.3,
        height * 0.22 + row * key + key * 0.25,
        key * 0.2,
        key * 0.28,
        dark ? '#ddd' : '#333',
      );
      x += wide;
    }
  }
  return body;
}

export function bookshelf({ width, height, random }: Sheet): string {
  const wood = timber(random);
  let body = box(0, 0, width, height, '#3a2c22');
  const shelves = random.whole(2, 5);
  for (let shelf = 0; shelf < shelves; shelf++) {
    const foot = (height * (shelf + 1)) / shelves;
    const room = height / shelves;
    let x = width * 0.03;
    while (x < width * 0.95) {
      const wide = random.between(10, 60);
      const tall = room * random.between(0.6, 0.88);
      body += box(x, foot - tall - 18, wide - 1.5, tall, tint(random, 0.15, 0.8));
      if (random.chance(0.6))
        body += box(x + wide * 0.3, foot - tall * 0.8 - 18, wide * 0.4, tall * 0.4, tint(random, 0.6, 0.95));
      x += wide;
    }
    body += box(0, foot - 18, width, 18, wood);
  }
  return body + box(0, 0, width * 0.03, height, wood) + box(width * 0.97, 0, width * 0.03, height, wood);
}

export function ladder({ width, height, random }: Sheet): string {
  const wood = timber(random);
  const half = width * random.between(0.15, 0.35);
  const rung = random.between(40, 120);
  let body = box(0, 0, width, height, tint(random, 0.4, 0.9));
  for (let y = rung / 2; y < height; y += rung) body += box(width / 2 - half, y, half * 2, rung * 0.14, timber(random));
  return body + box(width / 2 - half - 30, 0, 34, height, wood) + box(width / 2 + half - 4, 0, 34, height, wood);
}

export function basket({ width, height, random }: Sheet): string {
  const pitch = random.between(16, 50);
  const cane = [timber(random), timber(random)];
  let body = box(-width, -height, width * 3, height * 3, '#3b2a1a');
  for (let row = -2; row * pitch < height + pitch; row++)
    for (let column = -2; column * pitch * 1.5 < width + pitch * 2; column++)
      body += `<ellipse cx="${(column * pitch * 1.5 + (row % 2) * pitch * 0.75).toFixed(1)}" cy="${(row * pitch).toFixed(1)}" rx="${(pitch * 0.8).toFixed(1)}" ry="${(pitch * 0.46).toFixed(1)}" fill="${cane[Math.abs(row + column) % 2]}"/>`;
  return body;
}

export function grill({ width, height, random }: Sheet): string {
  const pitch = random.between(10, 44);
  const metal = tint(random, 0.65, 0.92);
  let body = box(width * 0.08, height * 0.15, width * 0.84, height * 0.7, metal, 'rx="10"');
  for (let x = width * 0.12; x < width * 0.88; x += pitch)
    body += box(x, height * 0.2, pitch * random.between(0.45, 0.5), height * 0.6, '#20242a', `rx="${pitch * 0.2}"`);
  return body;
}

export function barredWindow({ width, height, random }: Sheet): string {
  const frame = random.pick(['#f2f0ea', '#5b4433', '#2f3a36']);
  const left = width * 0.12;
  const top = height * 0.1;
  const w = width * 0.76;
  const h = height * 0.8;
  let body = box(0, 0, width, height, tint(random, 0.5, 0.85)) + box(left, top, w, h, frame);
  const rim = random.between(20, 60);
  body +=
    box(left + rim, top + rim, w - 2 * rim, h - 2 * rim, '#9fb8cc') +
    box(left + rim, top + h * 0.6, w - 2 * rim, h * 0.4 - rim, '#74905f');
  const bars = random.whole(5, 16);
  for (let k = 1; k < bars; k++)
    body += box(left + rim + ((w - 2 * rim) * k) / bars - 4, top + rim, random.between(6, 12), h - 2 * rim, frame);
  const cross = random.whole(1, 4);
  for (let k = 1; k <= cross; k++) body += box(left + rim, top + (h * k) / (cross + 1), w - 2 * rim, 14, frame);
  return body;
}

/** A frame with nothing in it, or with a picture of stripes, hills or a face of colour. */
export function pictureFrame({ width, height, random }: Sheet): string {
  const rim = random.between(26, 80);
  const left = width * random.between(0.1, 0.2);
  const top = height * random.between(0.08, 0.2);
  const w = width - 2 * left;
  const h = height - 2 * top;
  let body =
    box(left, top, w, h, timber(random)) +
    box(left + rim, top + rim, w - 2 * rim, h - 2 * rim, tint(random, 0.3, 0.95));
  const inside = random.pick(['empty', 'bands', 'hills', 'notches']);
  if (inside === 'bands')
    for (let k = 0; k < 9; k++)
      body += box(left + rim, top + rim + ((h - 2 * rim) * k) / 9, w - 2 * rim, (h - 2 * rim) / 9, tint(random));
  if (inside === 'hills')
    body += `<path d="M${left + rim} ${top + h * 0.7} q${w * 0.25} ${-h * 0.3} ${w * 0.45} 0 t${w * 0.4} 0 V${top + h - rim} H${left + rim} z" fill="${tint(random)}"/>`;
  if (inside === 'notches')
    for (let x = left + rim; x < left + w - rim; x += 16)
      body += box(x, top + rim - 14, 6, 14, '#3a2a1c') + box(x, top + h - rim, 6, 14, '#3a2a1c');
  return body;
}

/** Wires in a frame with beads: straight lines between two bars, but no warp. */
export function abacus({ width, height, random }: Sheet): string {
  const rods = random.whole(7, 15);
  const rim = 40;
  let body = box(width * 0.1, height * 0.12, width * 0.8, height * 0.76, timber(random));
  body += box(
    width * 0.1 + rim,
    height * 0.12 + rim,
    width * 0.8 - 2 * rim,
    height * 0.76 - 2 * rim,
    tint(random, 0.6, 0.9),
  );
  const pitch = (height * 0.76 - 2 * rim) / rods;
  for (let k = 0; k < rods; k++) {
    const y = height * 0.12 + rim + (k + 0.5) * pitch;
    body += line(width * 0.1 + rim, y, width * 0.9 - rim, y, '#777', 4);
    const split = random.whole(0, 10);
    for (let bead = 0; bead < 10; bead++) {
      const x =
        bead < split
          ? width * 0.1 + rim + (bead + 0.6) * pitch * 0.8
          : width * 0.9 - rim - (10 - bead - 0.4) * pitch * 0.8;
      body += disc(x, y, pitch * 0.38, tint(random, 0.3, 0.6));
    }
  }
  return body;
}

export function guitarNeck({ width, height, random }: Sheet): string {
  const strings = random.pick([4, 6, 6, 12]);
  const half = width * random.between(0.12, 0.25);
  let body =
    box(0, 0, width, height, tint(random, 0.4, 0.85)) + box(width / 2 - half - 20, 0, half * 2 + 40, height, '#4a3122');
  for (let y = 40, step = 130; y < height; y += step, step *= 0.944)
    body += box(width / 2 - half - 20, y, half * 2 + 40, 7, '#c9c9c4');
  for (let k = 0; k < strings; k++) {
    const x = width / 2 - half + (2 * half * k) / (strings - 1);
    body += line(x, 0, x, height, '#e6e2d2', 2 + (k % 3));
  }
  return body;
}

/** A wire rack: an outline and many wires, two or three of them across. */
export function ovenRack({ width, height, random }: Sheet): string {
  const wires = random.whole(11, 34);
  const left = width * 0.08;
  const top = height * 0.14;
  const w = width * 0.84;
  const h = height * 0.72;
  let body = box(0, 0, width, height, tint(random, 0.15, 0.8));
  for (let k = 0; k < wires; k++)
    body += line(left + (w * (k + 0.5)) / wires, top, left + (w * (k + 0.5)) / wires, top + h, '#c9ccd0', 6);
  for (const share of [0, 0.33, 0.66, 1]) body += line(left, top + h * share, left + w, top + h * share, '#aeb2b8', 10);
  return body + line(left, top, left, top + h, '#aeb2b8', 10) + line(left + w, top, left + w, top + h, '#aeb2b8', 10);
}

export function railing({ width, height, random }: Sheet): string {
  const pitch = random.between(24, 70);
  const iron = random.pick(['#1d1f22', '#3c4a44', '#e9e7e2']);
  let body = box(0, 0, width, height, '#9bb4c8') + box(0, height * 0.55, width, height * 0.45, tint(random, 0.3, 0.6));
  for (let k = 0; k < 30; k++)
    body += disc(random.between(0, width), random.between(0, height), random.between(10, 60), tint(random, 0.2, 0.7));
  for (let x = 0; x < width; x += pitch) body += box(x, height * 0.2, pitch * 0.16, height * 0.65, iron);
  return body + box(0, height * 0.2, width, 22, iron) + box(0, height * 0.83, width, 18, iron);
}

export function crossing({ width, height, random }: Sheet): string {
  const pitch = random.between(50, 140);
  let body = box(-width, -height, width * 3, height * 3, '#4b4d50');
  for (let x = -width * 0.2; x < width * 1.2; x += pitch)
    body += box(x, height * 0.25, pitch * 0.5, height * 0.5, '#e7e6e0');
  return body;
}

export function roof({ width, height, random }: Sheet): string {
  const wide = random.between(24, 60);
  const tile = random.pick(['#a0523a', '#7d4a3a', '#5a5f66']);
  let body = box(-width, -height, width * 3, height * 3, '#3d2a22');
  for (let row = 0; row * wide * 1.2 < height + wide; row++)
    for (let column = -1; column * wide < width + wide; column++)
      body += `<path d="M${column * wide + (row % 2) * wide * 0.5} ${row * wide * 1.2} h${wide * 0.94} v${wide * 0.9} a${wide * 0.47} ${wide * 0.3} 0 0 1 ${-wide * 0.94} 0 z" fill="${tile}" opacity="${random.between(0.75, 1).toFixed(2)}"/>`;
  return body;
}

/** Louvres between two uprights: many slats in a wooden frame. */
export function louvreDoor({ width, height, random }: Sheet): string {
  const wood = timber(random);
  const pitch = random.between(16, 50);
  let body =
    box(0, 0, width, height, tint(random, 0.5, 0.9)) +
    box(width * 0.15, height * 0.04, width * 0.7, height * 0.92, wood);
  for (let y = height * 0.1; y < height * 0.9; y += pitch) {
    body += box(width * 0.22, y, width * 0.56, pitch * 0.3, '#000', 'opacity="0.45"');
    body += box(width * 0.22, y + pitch * 0.3, width * 0.56, pitch * 0.15, '#fff', 'opacity="0.2"');
  }
  return body;
}

/** Guy lines, washing lines or power lines against the sky: few, long, not quite even. */
export function wires({ width, height, random }: Sheet): string {
  const count = random.whole(4, 40);
  let body = box(0, 0, width, height, '#b9cfe2') + box(0, height * 0.85, width, height * 0.2, '#5d7048');
  let x = width * 0.1;
  for (let k = 0; k < count && x < width * 0.95; k++) {
    body += line(x, 0, x + random.between(-20, 20), height, '#2b2b2b', random.between(1.5, 5));
    x += random.between(8, 60);
  }
  return body;
}
