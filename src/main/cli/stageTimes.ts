/** Sums the time between one stage and the next. */
export interface StageTimes {
  readonly begin: (stage: string) => void;
  /** @returns whole milliseconds of every stage, and `total`. */
  readonly end: () => Record<string, number>;
}

export function stageTimes(now: () => number): StageTimes {
  const sums: Record<string, number> = {};
  const begun = now();
  let stage = '';
  let since = begun;
  const begin = (next: string): void => {
    if (next === stage) return;
    const time = now();
    if (stage !== '') sums[stage] = (sums[stage] ?? 0) + time - since;
    stage = next;
    since = time;
  };
  return {
    begin,
    end: () => {
      begin('');
      const rounded = Object.fromEntries(Object.entries(sums).map(([name, value]) => [name, Math.round(value)]));
      return { ...rounded, total: Math.round(now() - begun) };
    },
  };
}
