import type { RidgeTrack } from './ridgeTracks.ts';
import type { TurnedFrame } from './turned.ts';
import type { WarpBand } from './warpBand.ts';

export type Polarity = 'bright' | 'dark';

/** A band of strings in one direction of the picture. */
export interface BandView {
  readonly angle: number;
  readonly frame: TurnedFrame;
  readonly polarity: Polarity;
  readonly tracks: readonly RidgeTrack[];
  readonly band: WarpBand;
  /** px per mm from the comb, at a height of the turned picture. */
  readonly scale: (y: number) => number;
}
