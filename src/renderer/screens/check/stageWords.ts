import type { Words } from '../../words/en.ts';
import type { Job } from './checkStore.ts';

/** What the reading is doing, in words; a stage without words of its own is said by its own name. */
export function stageWords(job: Job, words: Words['check']): string {
  const stage =
    job.stage === ''
      ? words.stages.start
      : ((words.stages as Readonly<Record<string, string>>)[job.stage] ?? job.stage);
  return job.of > 1 ? words.stageOf(stage ?? '', Math.min(job.done, job.of), job.of) : (stage ?? '');
}
