import type { Photo } from '../../src/core/photo/raster.ts';

/** Seeded numbers in 0–1. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

type Shade = (x: number, y: number) => readonly [number, number, number];

function picture(width: number, height: number, grain: number, random: () => number, shade: Shade): Photo {
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const colour = shade(x, y);
      for (let c = 0; c < 3; c++) {
        rgb[(y * width + x) * 3 + c] = Math.max(0, Math.min(255, colour[c]! + grain * (random() - 0.5)));
      }
    }
  }
  return { width, height, rgb };
}

export const kinds = ['chessboard', 'noise', 'text', 'stripes', 'plain', 'fence', 'fabric', 'bookshelf'] as const;

/** A picture without a loom. */
export function notALoom(kind: (typeof kinds)[number], seed: number): Photo {
  const random = seeded(seed * 7919 + kinds.indexOf(kind));
  const width = 750;
  const height = 1000;
  const turn = (random() - 0.5) * 0.5;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const u = (x: number, y: number) => c * (x - width / 2) + s * (y - height / 2);
  const v = (x: number, y: number) => -s * (x - width / 2) + c * (y - height / 2);
  const tint = () => [60 + 180 * random(), 60 + 180 * random(), 60 + 180 * random()] as const;
  const a = tint();
  const b = tint();
  const grain = 4 + 20 * random();
  const period = 9 + 30 * random();
  const paint = (shade: Shade) => picture(width, height, grain, random, shade);
  switch (kind) {
    case 'chessboard': {
      const cell = 40 + 60 * random();
      return paint((x, y) => ((Math.floor(u(x, y) / cell) + Math.floor(v(x, y) / cell)) & 1 ? a : b));
    }
    case 'noise': {
      const cells = Array.from({ length: 4096 }, random);
      const size = 1 + Math.floor(4 * random());
      return paint((x, y) => {
        const value = 255 * cells[(((x / size) | 0) * 31 + ((y / size) | 0) * 57) & 4095]!;
        return [value, value, value];
      });
    }
    case 'text': {
      const words = Array.from({ length: 8192 }, random);
      const line = 14 + 12 * random();
      return paint((x, y) => {
        const row = Math.floor(v(x, y) / line);
        const inLine = v(x, y) / line - row;
        const ink = inLine > 0.3 && inLine < 0.8 && words[(Math.floor(u(x, y) / 3) + 977 * row) & 8191]! > 0.55;
        const margin = Math.abs(u(x, y)) > width * 0.38;
        return ink && !margin ? [40, 40, 45] : [235, 232, 225];
      });
    }
    case 'stripes':
      return paint((x, y) => ((((u(x, y) / period) % 1) + 1) % 1 < 0.4 ? a : b));
    case 'plain':
      return paint((x, y) => [a[0] + 0.02 * x, a[1] + 0.02 * y, a[2]]);
    case 'fence': {
      // Evenly spaced pales between two rails: a comb with bars, but no frame.
      const rail = 130 + 80 * random();
      return paint((x, y) => {
        const high = v(x, y);
        if (Math.abs(Math.abs(high) - rail) < 22) return b;
        return (((u(x, y) / period) % 1) + 1) % 1 < 0.35 && Math.abs(high) < rail + 120 ? b : a;
      });
    }
    case 'fabric':
      return paint((x, y) => {
        const warp = Math.cos((2 * Math.PI * u(x, y)) / period);
        const weft = Math.cos((4 * Math.PI * v(x, y)) / period);
        const k = 0.5 + 0.25 * warp * weft + 0.2 * warp;
        return [a[0] * k + b[0] * (1 - k), a[1] * k + b[1] * (1 - k), a[2] * k + b[2] * (1 - k)];
      });
    case 'bookshelf': {
      const spines = Array.from({ length: 512 }, () => tint());
      return paint((x, y) => {
        const shelf = Math.floor(v(x, y) / 260);
        if (v(x, y) / 260 - shelf < 0.08) return b;
        return spines[(Math.floor(u(x, y) / period) + 101 * shelf) & 511]!;
      });
    }
  }
}
