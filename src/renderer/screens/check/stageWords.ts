import type { Words } from '../../words/en.ts';
import type { Job } from './checkStore.ts';

/** What the reading is doing, in words. Only what goes end by end is counted; a few steps need no numbers. */
export function stageWords(job: Job, words: Words['check']): string {
  const stage = words.stages[job.stage];
  return job.of > 4 ? words.stageOf(stage, Math.min(job.done, job.of), job.of) : stage;
}
