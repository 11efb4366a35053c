import type { Problem } from '../../core/model/outcome.ts';

/** Figures and answers go to standard output, sentences about trouble to standard error. */
export const say = (words: string): void => {
  process.stdout.write(`${words}\n`);
};
export const complain = (words: string): void => {
  process.stderr.write(`${words}\n`);
};
export const complainOf = (problem: Problem): void => complain(`${problem.sentence} ${problem.remedy}`);

/** Whoever reads may stop reading, as `head` does; that is no trouble of ours. */
export function endWhenNobodyReads(): void {
  process.stdout.on('error', () => process.exit(0));
}
