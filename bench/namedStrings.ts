import type { Flag } from '../src/core/model/check.ts';

/** Indices of the ends that flags call slack, and of those said to hang in another's notch, read from their words. */
export function namedStrings(flags: readonly Flag[]): { readonly slack: number[]; readonly crossed: number[] } {
  const slack: number[] = [];
  const crossed: number[] = [];
  for (const { kind, message } of flags) {
    if (kind !== 'slack') continue;
    const group = /^Ends? (\d+)(?: to (\d+))? bows? /.exec(message.mm);
    const pair = /^Ends (\d+) and (\d+) cross /.exec(message.mm);
    const alone = /^End (\d+) hangs in the notch of end (\d+)/.exec(message.mm);
    if (group) for (let end = Number(group[1]); end <= Number(group[2] ?? group[1]); end++) slack.push(end - 1);
    else if (pair) crossed.push(Number(pair[1]) - 1, Number(pair[2]) - 1);
    else if (alone) crossed.push(Number(alone[1]) - 1);
    else throw new Error(`not understood: ${message.mm}`);
  }
  return { slack, crossed };
}
