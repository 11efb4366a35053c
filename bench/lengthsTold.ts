import type { LoomReading } from '../src/core/model/check.ts';

/** Within this share a length that is told in words is the true one: `about`, and rounded. */
const ABOUT = 0.04;

/** Whether the reasons of a reading tell all of some lengths, mm: each with one that is told. */
export function lengthsTold({ reasons }: Pick<LoomReading, 'reasons'>, lengths: readonly number[]): boolean {
  const told = reasons.flatMap(({ message }) =>
    [...message.mm.matchAll(/(\d[\d\s]*(?:\.\d+)?)\smm/g)].map(([, figure]) => Number(figure!.replace(/\s/g, ''))),
  );
  return lengths.every((length) => told.some((one) => Math.abs(one / length - 1) < ABOUT));
}
