import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files that measure photographs take a minute and more. They are begun first, or in a clone that has no times of earlier
 * runs (there the larger file goes first) one of them is left to the end, where the other worker has nothing to do.
 */
class PhotographsFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const long = ({ moduleId }: TestSpecification) => /\/tests\/(?:photo-|service\/service)/.test(moduleId);
    return [...sorted.filter(long), ...sorted.filter((file) => !long(file))];
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/fixtures/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    sequence: { sequencer: PhotographsFirst },
  },
});
