import { type PhotoScore, summarise } from './accuracyScore.ts';

/** What a photograph's check must reach to be of use at the loom: the first bar, wider than what is aimed at. */
export const firstBars = { selvedgeMm: 0.5, fellMm: 1, reported: 0.95 } as const;

/** What falls short of the first bar on one photograph, in a few words each; empty when it holds. */
export function shortOfFirstBars(score: PhotoScore): string[] {
  const short: string[] = [];
  if (score.status !== 'measured') return ['not measured'];
  if (score.endsCounted !== score.endsTrue) short.push('ends counted wrong');
  const all = [
    ['selvedge', [score.selvedge], false, firstBars.selvedgeMm],
    ['selvedge 2 mm or more off', [score.selvedge], true, firstBars.selvedgeMm],
    ['fell', [score.fell], false, firstBars.fellMm],
  ] as const;
  for (const [name, tallies, offPlan, limit] of all) {
    const { middle, reported } = summarise(tallies, offPlan);
    if (reported === null) continue;
    if (middle === null || middle > limit) short.push(`${name} median over ${limit} mm`);
    if (!offPlan && reported < firstBars.reported) short.push(`${name} reported on too few`);
  }
  if (score.wrong) short.push('wrong by its own sigma');
  return short;
}
