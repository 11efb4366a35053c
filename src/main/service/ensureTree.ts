import { mkdir } from 'node:fs/promises';

/** Makes a folder of the program's own, and those above it. */
export const ensureTree = async (path: string): Promise<void> => {
  await mkdir(path, { recursive: true });
};
