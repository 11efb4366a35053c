import { bench } from './de/bench.ts';
import { cartoon } from './de/cartoon.ts';
import { check } from './de/check.ts';
import { firstRun } from './de/firstRun.ts';
import { order } from './de/order.ts';
import { piece } from './de/piece.ts';
import { record } from './de/record.ts';
import { shell } from './de/shell.ts';
import { tour } from './de/tour.ts';
import type { Words } from './en.ts';

/** Every word on screen, in German. */
export const de: Words = { shell, firstRun, piece, cartoon, order, bench, check, record, tour };
