import { type PhotoScore, summarise, type Tally, type TallySummary } from './accuracyScore.ts';
import type { CheckJson } from './checkJson.ts';

const figure = (value: number | null): string => (value === null ? 'none' : value.toFixed(2));
const percent = (value: number | null): string => (value === null ? 'none' : `${(100 * value).toFixed(1)}%`);

function tallyWords(name: string, summary: TallySummary): string {
  if (summary.reported === null) return `${name}: no truth`;
  return (
    `${name}: median ${figure(summary.middle)} p95 ${figure(summary.high)} sigma ${figure(summary.sigma)} mm, ` +
    `reported ${percent(summary.reported)}, within 2 sigma ${percent(summary.within)}`
  );
}

function tallyLines(score: Pick<PhotoScore, 'selvedge' | 'fell' | 'ends'>): string[] {
  return tallyLinesOf([score.selvedge], [score.fell], [score.ends]);
}

function tallyLinesOf(selvedge: readonly Tally[], fell: readonly Tally[], ends: readonly Tally[]): string[] {
  const lines: string[] = [];
  for (const [name, tallies] of [
    ['selvedge', selvedge],
    ['fell', fell],
    ['ends at the fell', ends],
  ] as const) {
    lines.push(`  ${tallyWords(name, summarise(tallies))}`);
    if (tallies.some((tally) => tally.wantedOffPlan > 0)) {
      lines.push(`  ${tallyWords(`${name}, 2 mm or more off`, summarise(tallies, true))}`);
    }
  }
  return lines;
}

const time = (check: CheckJson): string => `${((check.timing_ms.total ?? 0) / 1000).toFixed(1)} s`;

/** What is said of one photograph. */
export function photoLines(name: string, check: CheckJson, score: PhotoScore | null): string[] {
  const reasons = check.reasons.map((reason) => reason.code).join(', ');
  const head = `${name}: ${check.status}${reasons ? ` (${reasons})` : ''}, ends ${check.ends_counted ?? 'not counted'}`;
  const flags = check.flags.map((flag) => `${flag.kind}${flag.side ? ` ${flag.side}` : ''}`).join(', ') || 'none';
  if (!score) return [`${head}, no truth, flags: ${flags}, ${time(check)}`];
  const counted = score.endsCounted === score.endsTrue ? 'right' : `truth ${score.endsTrue}`;
  const pass =
    score.passError === null ? 'none' : `${(100 * score.passError).toFixed(2)}% off over ${score.passes} passes`;
  const cells = score.cells
    ? `${percent(score.cells.seen > 0 ? score.cells.right / score.cells.seen : null)} right of ${percent(score.cells.woven > 0 ? score.cells.seen / score.cells.woven : null)} read`
    : 'none';
  return [
    `${head} (${counted})${score.wrong ? ', WRONG' : ''}, ${time(check)}`,
    ...tallyLines(score),
    `  pass height: ${pass}; cells: ${cells}`,
    `  flags: ${flags}${list('; missed', score.flagsMissed)}${list('; false', score.flagsFalse)}`,
  ];
}

const list = (label: string, items: readonly string[]): string =>
  items.length > 0 ? `${label}: ${items.join(', ')}` : '';

/** One block over a group of photographs. */
export function groupLines(label: string, scores: readonly PhotoScore[]): string[] {
  const measured = scores.filter((score) => score.status === 'measured');
  const counted = scores.filter((score) => score.endsCounted === score.endsTrue).length;
  const passErrors = measured.flatMap((score) =>
    score.passError !== null && score.passes >= 40 ? [Math.abs(score.passError)] : [],
  );
  const cells = measured.flatMap((score) => (score.cells ? [score.cells] : []));
  const seen = cells.reduce((sum, one) => sum + one.seen, 0);
  const right = cells.reduce((sum, one) => sum + one.right, 0);
  const missed = measured.reduce((sum, score) => sum + score.flagsMissed.length, 0);
  const falsely = measured.reduce((sum, score) => sum + score.flagsFalse.length, 0);
  return [
    `${label}: ${measured.length}/${scores.length} measured, ends counted right on ${counted}, ${scores.filter((score) => score.wrong).length} wrong`,
    ...tallyLinesOf(
      measured.map((score) => score.selvedge),
      measured.map((score) => score.fell),
      measured.map((score) => score.ends),
    ),
    `  pass height within 1%: ${passErrors.filter((error) => error <= 0.01).length}/${passErrors.length} of those with 40 passes or more; cells right: ${percent(seen > 0 ? right / seen : null)}; draw-in or spreading missed: ${missed}, flagged falsely: ${falsely}`,
  ];
}
