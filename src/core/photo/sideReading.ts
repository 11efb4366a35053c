import type { Measurement } from '../model/measurement.ts';

/** One side's selvedge at one height: cloth x, or null where it wasn't seen. */
export interface SideReading {
  readonly y: number;
  readonly x: Measurement | null;
}
