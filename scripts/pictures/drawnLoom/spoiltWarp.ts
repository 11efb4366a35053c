import { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import type { LoomScene } from './scene.ts';

/** The warp of a scene with one string hung slack, by 1.6 to 3 mm to one side, and two that change places elsewhere. */
export function spoiltWarp(scene: LoomScene, seed: number): LoomScene['warp'] {
  const random = new SeededRandom(seed + 77);
  const { ends } = scene.warp;
  const half = Math.floor(ends / 2);
  const [low, high] = [random.whole(1, half - 3), random.whole(half + 1, ends - 3)];
  const slackLow = random.chance(0.5);
  // A string can't hang beyond its neighbours: half a pitch is as far as it goes freely.
  const most = Math.min(3, 0.5 * scene.loom.pitch);
  return {
    ...scene.warp,
    missing: [],
    slack: [{ end: slackLow ? low : high, bow: random.pick([-1, 1]) * random.between(1.6, most) }],
    swapped: [slackLow ? high : low],
  };
}
