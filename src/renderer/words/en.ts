import { bench } from './en/bench.ts';
import { cartoon } from './en/cartoon.ts';
import { check } from './en/check.ts';
import { firstRun } from './en/firstRun.ts';
import { order } from './en/order.ts';
import { piece } from './en/piece.ts';
import { record } from './en/record.ts';
import { shell } from './en/shell.ts';
import { tour } from './en/tour.ts';

/** Every word on screen, in English. The other languages have the same shape, or they don't compile. */
export const en = { shell, firstRun, piece, cartoon, order, bench, check, record, tour };
export type Words = typeof en;
