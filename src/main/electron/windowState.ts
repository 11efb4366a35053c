import { readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';
import type { WindowState } from './windowOptions.ts';

const schema = z.strictObject({
  x: z.number().int().optional(),
  y: z.number().int().optional(),
  width: z.number().int().min(320).max(20_000),
  height: z.number().int().min(240).max(20_000),
  maximised: z.boolean(),
});

const usual: WindowState = { width: 1280, height: 800, maximised: false };

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where the window stood, if that place still lies on a screen. */
export function readWindowState(path: string, screens: readonly Area[]): WindowState {
  try {
    const state = schema.parse(JSON.parse(readFileSync(path, 'utf8')));
    const { x, y } = state;
    const onScreen =
      x !== undefined &&
      y !== undefined &&
      screens.some(
        (area) => x + 60 > area.x && x < area.x + area.width - 60 && y >= area.y && y < area.y + area.height - 60,
      );
    const size = { width: state.width, height: state.height, maximised: state.maximised };
    return onScreen ? { ...size, x, y } : size;
  } catch {
    return usual;
  }
}

/** Only a convenience: not being able to keep it stops nothing. */
export function writeWindowState(path: string, state: WindowState): void {
  try {
    writeFileSync(path, JSON.stringify(state));
  } catch {
    // See above.
  }
}
