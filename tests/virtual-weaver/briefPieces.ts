import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { SeededRandom } from './seededRandom.ts';

/** A shape of a flat description. */
export type BriefShape =
  | { readonly kind: 'poly'; readonly pts: readonly (readonly [number, number])[]; readonly yarn: number }
  | { readonly kind: 'circle'; readonly c: readonly [number, number]; readonly r: number; readonly yarn: number }
  | { readonly kind: 'band'; readonly y: readonly [number, number]; readonly yarn: number };

export interface BriefPiece {
  readonly piece: Piece;
  readonly shapes: readonly BriefShape[];
  readonly ends: number;
  readonly pitch: number;
  readonly passes: number;
  readonly passHeight: number;
  readonly header: number;
  readonly ground: number;
}

interface Sheet {
  readonly random: SeededRandom;
  readonly width: number;
  readonly height: number;
  readonly pitch: number;
  readonly passHeight: number;
  readonly colours: number;
}

type Family = (sheet: Sheet) => BriefShape[];

const box = (left: number, bottom: number, right: number, top: number, yarn: number): BriefShape => ({
  kind: 'poly',
  pts: [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ],
  yarn,
});

const anyYarn = ({ random, colours }: Sheet) => random.whole(0, colours - 1);

/** Wedges of three to six yarns that meet in one point. */
const pinwheel: Family = ({ random, width, height, colours }) => {
  const wedges = random.whole(3, 6);
  const turn = random.between(0, Math.PI);
  const centre = [random.between(-0.2, 0.2) * width, random.between(0.3, 0.7) * height] as const;
  const reach = random.chance(0.5) ? 2 * (width + height) : random.between(0.2, 0.5) * Math.min(width, height);
  return Array.from({ length: wedges }, (_, wedge): BriefShape => {
    const rim = [0, 0.5, 1].map((share) => {
      const angle = turn + (2 * Math.PI * (wedge + share)) / wedges;
      return [centre[0] + reach * Math.cos(angle), centre[1] + reach * Math.sin(angle)] as const;
    });
    return { kind: 'poly', pts: [centre, ...rim], yarn: wedge % colours };
  });
};

const checkerboard: Family = (sheet) => {
  const { random, width, height, colours } = sheet;
  const [across, up] = [random.whole(2, 7), random.whole(2, 9)];
  const slant = random.chance(0.4) ? random.between(-0.5, 0.5) * (width / across) : 0;
  return Array.from({ length: across * up }, (_, at): BriefShape => {
    const [column, row] = [at % across, Math.floor(at / across)];
    const left = -width / 2 + (column * width) / across;
    const [bottom, top] = [(row * height) / up, ((row + 1) * height) / up];
    const right = left + width / across;
    return {
      kind: 'poly',
      pts: [
        [left, bottom],
        [right, bottom],
        [right + slant, top],
        [left + slant, top],
      ],
      yarn: (column + row) % colours,
    };
  });
};

/** A band that winds inwards, as a polygon that folds back on itself. */
const spiral: Family = (sheet) => {
  const { random, width, height } = sheet;
  const turns = random.between(1.2, 3);
  const steps = random.whole(16, 60);
  const thick = random.between(0.3, 0.7);
  const way = random.chance(0.5) ? 1 : -1;
  const place = (at: number, out: number): readonly [number, number] => {
    const angle = (way * 2 * Math.PI * turns * at) / steps;
    const reach = (0.08 + (0.4 * (at + out * (steps / turns))) / steps) * 0.9;
    return [reach * width * Math.cos(angle), height / 2 + reach * height * Math.sin(angle)];
  };
  const outer = Array.from({ length: steps + 1 }, (_, at) => place(at, thick));
  const inner = Array.from({ length: steps + 1 }, (_, at) => place(steps - at, 0));
  return [{ kind: 'poly', pts: [...outer, ...inner], yarn: anyYarn(sheet) }];
};

const stars: Family = (sheet) => {
  const { random, width, height } = sheet;
  return Array.from({ length: random.whole(1, 4) }, (): BriefShape => {
    const spikes = random.whole(3, 11);
    const outer = random.between(0.1, 0.45) * Math.min(width, height);
    const inner = outer * random.between(0.15, 0.7);
    const [x, y] = [random.between(-0.35, 0.35) * width, random.between(0.2, 0.8) * height];
    const turn = random.chance(0.5) ? Math.PI / 2 : random.between(0, Math.PI);
    const pts = Array.from({ length: spikes * 2 }, (_, index) => {
      const reach = index % 2 === 0 ? outer : inner;
      const angle = turn + (index * Math.PI) / spikes;
      return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)] as const;
    });
    return { kind: 'poly', pts, yarn: anyYarn(sheet) };
  });
};

/** Teeth that stand up, hang down, or both and mesh, some of them an end wide. */
const combs: Family = (sheet) => {
  const { random, width, height, pitch } = sheet;
  const teeth = random.whole(2, 8);
  const step = width / teeth;
  const wide = random.chance(0.3) ? pitch : step * random.between(0.25, 0.75);
  const up = Array.from({ length: teeth }, (_, at) =>
    box(-width / 2 + at * step, height * 0.2, -width / 2 + at * step + wide, height * random.between(0.5, 0.8), 1),
  );
  const down = Array.from({ length: teeth }, (_, at) => {
    const left = -width / 2 + at * step + wide;
    return box(left, height * random.between(0.25, 0.5), -width / 2 + (at + 1) * step, height * 0.8, 2);
  });
  const spine = box(-width / 2, height * 0.1, width / 2, height * 0.2, 1);
  return random.chance(0.5) ? [spine, ...up] : [spine, ...up, ...down];
};

const rings: Family = (sheet) => {
  const { random, width, height, colours } = sheet;
  const c = [random.between(-0.3, 0.3) * width, random.between(0.2, 0.8) * height] as const;
  const reach = random.between(0.2, 0.6) * Math.min(width, height);
  const depth = random.whole(2, 6);
  return Array.from({ length: depth }, (_, at) => ({
    kind: 'circle' as const,
    c,
    r: (reach * (at + 1)) / depth,
    yarn: at % colours,
  }));
};

/** Stairs whose treads and risers fall anywhere, not on passes and ends. */
const stairs: Family = (sheet) => {
  const { random, width, height } = sheet;
  const steps = random.whole(2, 12);
  const pts: [number, number][] = [[-width / 2, 0]];
  for (let at = 0; at < steps; at += 1) {
    const x = width / 2 - ((at + random.between(0, 0.9)) * width) / steps;
    pts.push([x, (at * height) / steps], [x, ((at + 1) * height) / steps]);
  }
  pts.push([-width / 2, height]);
  const lean = random.chance(0.5) ? pts : pts.map(([x, y]) => [-x, y] as [number, number]);
  return [{ kind: 'poly', pts: lean, yarn: anyYarn(sheet) }];
};

/** Stripes and bands thinner than an end or a pass, and some just as wide. */
const threads: Family = (sheet) => {
  const { random, width, height, pitch, passHeight } = sheet;
  return Array.from({ length: random.whole(2, 9) }, (): BriefShape => {
    const yarn = anyYarn(sheet);
    if (random.chance(0.4)) {
      const y = random.between(0, 1) * height;
      return { kind: 'band', y: [y, y + passHeight * random.between(0.3, 3)], yarn };
    }
    const x = random.between(-0.5, 0.5) * width;
    const lean = random.between(-1, 1) * (random.chance(0.5) ? pitch : width / 2);
    const wide = pitch * random.between(0.4, 2.2);
    return {
      kind: 'poly',
      pts: [
        [x, 0],
        [x + wide, 0],
        [x + wide + lean, height],
        [x + lean, height],
      ],
      yarn,
    };
  });
};

/** Bands of every yarn, with circles and a wedge that cut through them. */
const cutBands: Family = (sheet) => {
  const { random, width, height, colours } = sheet;
  const bands = Array.from({ length: random.whole(2, 6) }, (_, at, all = bandsCount(random)) => {
    const from = (at * height) / all;
    return { kind: 'band' as const, y: [from, from + height / all] as const, yarn: at % colours };
  });
  const circle: BriefShape = {
    kind: 'circle',
    c: [random.between(-0.4, 0.4) * width, random.between(0.2, 0.8) * height],
    r: random.between(0.1, 0.4) * Math.min(width, height),
    yarn: anyYarn(sheet),
  };
  const tip = random.between(0.3, 1) * height;
  const wedge: BriefShape = {
    kind: 'poly',
    pts: [
      [-width * random.between(0.1, 0.5), 0],
      [width * random.between(0.1, 0.5), 0],
      [random.between(-0.3, 0.3) * width, tip],
    ],
    yarn: anyYarn(sheet),
  };
  return random.chance(0.5) ? [circle, wedge, ...bands] : [wedge, circle, ...bands];
};

const bandsCount = (random: SeededRandom) => random.whole(3, 8);

/** Long straight edges through the whole cloth, at angles from a few degrees to nearly upright. */
const shards: Family = (sheet) => {
  const { random, width, height, colours } = sheet;
  return Array.from({ length: random.whole(1, 5) }, (_, at): BriefShape => {
    const angle = (random.between(3, 177) * Math.PI) / 180;
    const [x, y] = [random.between(-0.4, 0.4) * width, random.between(0.1, 0.9) * height];
    const [dx, dy] = [Math.cos(angle) * 4 * (width + height), Math.sin(angle) * 4 * (width + height)];
    const [ox, oy] = [dy, -dx];
    return {
      kind: 'poly',
      pts: [
        [x - dx, y - dy],
        [x + dx, y + dy],
        [x + dx + ox, y + dy + oy],
        [x - dx + ox, y - dy + oy],
      ],
      yarn: at % colours,
    };
  });
};

const families = { pinwheel, checkerboard, spiral, stars, combs, rings, stairs, threads, cutBands, shards };
const names = Object.keys(families) as (keyof typeof families)[];

export const briefFamilyOf = (seed: number): string => names[seed % names.length] ?? 'shards';

function sizeOf(random: SeededRandom, seed: number): readonly [ends: number, passes: number] {
  if (seed % 41 === 40) return [random.whole(120, 150), random.whole(1_000, 1_500)];
  if (seed % 7 === 6) return [random.whole(2, 5), random.whole(1, 30)];
  return [random.size(6, 90), random.size(12, 320)];
}

/** A piece from a flat description, as a stranger would write one. The same seed always gives the same piece. */
export function briefPiece(seed: number): BriefPiece {
  const random = new SeededRandom(seed + 7_000_000);
  const [ends, passes] = sizeOf(random, seed);
  const pitch = random.pick([3, 4.2333, 5.08, 6.25, 6.35, 8.4667]);
  const passHeight = Math.min(pitch * random.between(0.1, 0.6), 4_400 / passes);
  const colours = random.whole(2, 6);
  const header = random.pick([0, 0, 1, 2, 3, 5]);
  const ground = random.whole(0, colours - 1);
  const height = passes * passHeight;
  const sheet = { random, width: ends * pitch, height, pitch, passHeight, colours };
  const shapes = families[briefFamilyOf(seed) as keyof typeof families](sheet).map((shape) => ({
    ...shape,
    yarn: shape.yarn % colours,
  }));
  const brief = parseBrief({
    name: `Stranger ${seed}, ${briefFamilyOf(seed)}`,
    loom: {
      kind: 'notched frame',
      notch_pitch_mm: pitch,
      opening_width_mm: (ends + 4) * pitch,
      opening_height_mm: height + 150,
      bar_mm: 30,
      notches: ends + 3,
      depth_mm: 20,
    },
    warp: {
      ends,
      strings_per_end: random.pick([1, 2]),
      string_diameter_mm: pitch * 0.2,
      first_notch: random.whole(0, 3),
    },
    cloth: {
      base_above_bottom_bar_mm: 50,
      width_mm: ends * pitch,
      height_mm: height,
      pass_mm: passHeight,
      header_passes: Math.min(header, passes),
    },
    yarns: ['#efe8da', '#8a5a3c', '#2f7f86', '#c8922b', '#2d3350', '#7a2e2e'].slice(0, colours),
    ground,
    header_yarn: random.whole(0, colours - 1),
    shapes,
    scale_card: null,
  });
  if (!brief.ok) throw new Error(`Seed ${seed}: ${brief.problem.sentence}`);
  const piece = pieceFromBrief(brief.value, '2026-11-27T09:00:00.000Z');
  return { piece, shapes, ends, pitch, passes, passHeight, header: Math.min(header, passes), ground };
}
