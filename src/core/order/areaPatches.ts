import type { Chart } from '../model/plan.ts';

/**
 * Which patch each cell belongs to: cells of one area that hang together over shared sides. A shape and its mirror image
 * are one area in two patches.
 */
export function areaPatches({ areas, ends }: Pick<Chart, 'areas' | 'ends'>): Int32Array {
  const patches = new Int32Array(areas.length).fill(-1);
  let patch = 0;
  for (let start = 0; start < areas.length; start++) {
    if (patches[start] !== -1) continue;
    const waiting = [start];
    patches[start] = patch;
    for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
      const end = cell % ends;
      const beside = [end > 0 ? cell - 1 : -1, end < ends - 1 ? cell + 1 : -1, cell - ends, cell + ends];
      for (const next of beside) {
        if (next < 0 || next >= areas.length || patches[next] !== -1 || areas[next] !== areas[cell]) continue;
        patches[next] = patch;
        waiting.push(next);
      }
    }
    patch++;
  }
  return patches;
}
