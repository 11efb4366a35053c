import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { type MeasureOptions, measureLoom } from '../photo/measureLoom.ts';
import type { Photo } from '../photo/raster.ts';
import { compareReading } from './compareReading.ts';

/** The whole loom check of one photograph: measured, and where that worked, compared with the plan. */
export function checkPhoto(photo: Photo, piece: Piece, options: MeasureOptions): LoomReading {
  const reading = measureLoom(photo, piece, options);
  if (reading.status !== 'measured') return reading;
  options.onStage?.('compare', 0, 1);
  return { ...reading, flags: compareReading(reading, piece).flags };
}
