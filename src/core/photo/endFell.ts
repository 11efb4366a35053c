import type { Measurement } from '../model/measurement.ts';
import type { TrackLine } from './trackLine.ts';

/** What one end says about where its cloth stops. */
export interface EndFell {
  readonly end: number;
  readonly course: TrackLine;
  /** Cloth height; null when it can't be seen, and then `why`. */
  readonly fell: Measurement | null;
  readonly why: string | null;
}
