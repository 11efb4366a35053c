import { finish } from './drawnLoom/finish.ts';
import { paint } from './drawnLoom/paint.ts';
import type { LoomScene } from './drawnLoom/scene.ts';
import { drawnBrief, drawnTruth } from './drawnLoom/truth.ts';

export interface DrawnLoom {
  readonly jpeg: Buffer;
  readonly brief: ReturnType<typeof drawnBrief>;
  readonly truth: ReturnType<typeof drawnTruth>;
}

/** Paints one photograph of a loom with its brief and its exact truth. */
export async function drawnLoom(scene: LoomScene): Promise<DrawnLoom> {
  const { weave, cloth, camera, pixels } = paint(scene);
  const { openingWidth, openingHeight } = scene.loom;
  const corners = (
    [
      [-openingWidth / 2, 0],
      [openingWidth / 2, 0],
      [openingWidth / 2, openingHeight],
      [-openingWidth / 2, openingHeight],
    ] as const
  ).map(([x, y]) => {
    const [px, py] = camera.seen(x, y, 0);
    return [scene.finish.mirrored ? scene.width - px : px, py] as const;
  });
  return {
    jpeg: await finish(scene, pixels),
    brief: drawnBrief(scene),
    truth: drawnTruth(weave, cloth, corners, camera.distance),
  };
}
