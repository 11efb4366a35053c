import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** Where things are on this computer. Every shell uses the same places. */
export interface Places {
  /** Settings, the list of pieces, log, pictures made for the screen. */
  readonly data: string;
  /** New pieces are made in here. */
  readonly pieces: string;
  /** The sample as it ships; never written. */
  readonly sample: string;
}

function dataFolder(): string {
  const { env, platform } = process;
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Plumbweft');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Plumbweft');
  return join(env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'plumbweft');
}

/**
 * @param root where the program lies (the folder that holds `resources`).
 * @param home puts everything under one folder instead of the usual places: for tests and for a memory stick.
 */
export function findPlaces(root: string, home: string | undefined = process.env.PLUMBWEFT_HOME): Places {
  const sample = join(root, 'resources', 'sample');
  if (home !== undefined && home !== '') return { data: join(home, 'data'), pieces: join(home, 'pieces'), sample };
  const documents = join(homedir(), 'Documents');
  return {
    data: dataFolder(),
    pieces: join(existsSync(documents) ? documents : homedir(), 'Plumbweft'),
    sample,
  };
}
