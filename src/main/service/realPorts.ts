import { randomBytes } from 'node:crypto';
import { nodeFiles } from '../files/nodeFiles.ts';
import type { StorePorts } from '../store/storePorts.ts';

/** The real disk, clock and names. */
export const realStorePorts = (): StorePorts => ({
  files: nodeFiles,
  now: () => new Date(),
  token: () => randomBytes(8).toString('hex'),
});

/** How long one photograph may take to measure. */
export const VISION_SECONDS = 180;
