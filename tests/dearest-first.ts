import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Seconds of processor time, where a file takes more than some ten of them. A new one need not be here. */
const DEAR: readonly (readonly [seconds: number, file: string])[] = [
  [60, 'tests/statistics/culprits.test.ts'],
  [55, 'tests/statistics/extremes.test.ts'],
  [50, 'tests/live/page.test.ts'],
  [45, 'tests/statistics/constraint.test.ts'],
  [30, 'tests/statistics/reliefs.test.ts'],
  [25, 'tests/cli/killed.test.ts'],
  [25, 'tests/statistics/buffers.test.ts'],
  [25, 'tests/statistics/loads.test.ts'],
  [20, 'tests/live/levers/page.test.ts'],
  [20, 'tests/fuzz/fuzz.test.ts'],
  [15, 'tests/study/rate/loads.test.ts'],
];
const secondsOf = ({ moduleId }: TestSpecification): number =>
  DEAR.find(([, file]) => moduleId.endsWith(file))?.[0] ?? (moduleId.includes('/tests/statistics/') ? 10 : 0);

/**
 * The dearest files start first, so that no process is still at one of them when the others have ended. Vitest
 * itself goes by the size of files where it has never run them: a few lines of a statistical test would be last.
 */
export default class DearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted
      .map((file) => ({ file, seconds: secondsOf(file) }))
      .sort((a, b) => b.seconds - a.seconds)
      .map(({ file }) => file);
  }
}
