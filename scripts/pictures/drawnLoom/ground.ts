import { cloudNoise, hashNoise, smoothNoise } from '../noise.ts';
import type { Ground } from './scene.ts';

/** Paints what the loom lies on, at a place in mm, into `out`. */
export function groundPainter(ground: Ground): (x: number, y: number, out: Float64Array) => void {
  const cos = Math.cos(ground.turn);
  const sin = Math.sin(ground.turn);
  const { size, seed } = ground;
  const [one, two] = ground.colours;
  /** Share of the second colour and a brightness at a place along (u) and across (v) the pattern. */
  const pattern = (u: number, v: number): readonly [share: number, bright: number] => {
    switch (ground.kind) {
      case 'plain':
        return [0, 0.96 + 0.08 * cloudNoise(u / 40, v / 40, seed)];
      case 'planks': {
        const plank = Math.floor(v / (size * 6));
        const seam = Math.abs(v / (size * 6) - plank - 0.5) > 0.494 ? 0.45 : 1;
        const grain = cloudNoise(u / 90 + plank * 17, v / 2.5 + 3 * smoothNoise(u / 60, v / 20, seed + 4), seed);
        return [grain * 0.8 + 0.2 * hashNoise(plank, 1, seed), seam * (0.9 + 0.15 * hashNoise(plank, 3, seed))];
      }
      case 'stripes':
        return [smoothEdge(Math.sin((v / size) * Math.PI)), 0.95 + 0.1 * smoothNoise(u, v, seed)];
      case 'checks': {
        const a = smoothEdge(Math.sin((v / size) * Math.PI));
        const b = smoothEdge(Math.sin((u / size) * Math.PI));
        return [(a + b) / 2, 0.95 + 0.1 * smoothNoise(u, v, seed)];
      }
      case 'tiles': {
        const fu = Math.abs(u / (size * 5) - Math.round(u / (size * 5)));
        const fv = Math.abs(v / (size * 5) - Math.round(v / (size * 5)));
        const joint = Math.min(fu, fv) * size * 5 < 1.5;
        return [joint ? 1 : 0, 0.94 + 0.1 * cloudNoise(u / 25, v / 25, seed)];
      }
      case 'carpet':
        return [smoothNoise(u / 1.3, v / 1.3, seed), 0.75 + 0.4 * smoothNoise(u / 2.4, v / 2.4, seed + 3)];
      case 'speckle':
        return [smoothNoise(u / 2, v / 2, seed) > 0.78 ? 1 : 0, 0.92 + 0.14 * cloudNoise(u / 9, v / 9, seed + 1)];
      case 'parquet': {
        const block = size * 5;
        const column = Math.floor(u / block);
        const row = Math.floor(v / block);
        const turned = (column + row) % 2 === 0;
        const lath = Math.floor((turned ? u : v) / (block / 5));
        const along = turned ? v : u;
        const across = turned ? u : v;
        const seam = Math.abs((across / block) * 5 - lath - 0.5) > 0.47 ? 0.6 : 1;
        return [cloudNoise(along / 30, across / 2, seed + lath), seam];
      }
      case 'cloth': {
        const thread = Math.sin(u * 2.4) * Math.sin(v * 2.4);
        return [0.5 + 0.3 * thread, 0.85 + 0.25 * cloudNoise(u / 60, v / 25, seed)];
      }
      case 'dots': {
        const du = u / size - Math.round(u / size);
        const dv = v / size - Math.round(v / size);
        return [du * du + dv * dv < 0.06 ? 1 : 0, 0.97];
      }
    }
  };
  return (x, y, out) => {
    const [share, bright] = pattern(x * cos + y * sin, y * cos - x * sin);
    for (let channel = 0; channel < 3; channel++)
      out[channel] = (one[channel]! * (1 - share) + two[channel]! * share) * bright;
  };
}

const smoothEdge = (wave: number): number => Math.max(0, Math.min(1, 0.5 + wave * 6));
