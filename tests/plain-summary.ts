import type { Reporter, TestModule } from 'vitest/node';

/**
 * The last line of a test run, alone on its line and without colour: `12 passed, 0 failed` or `12 passed, 0
 * failed, 1 skipped`. Tests are counted, not files; a file that could not be loaded and an error outside
 * every test count as one failed each, so that a broken run never reads as a clean one.
 */
export function plainSummary(
  modules: readonly Pick<TestModule, 'children' | 'errors'>[],
  strayErrors: number,
): string {
  let passed = 0;
  let skipped = 0;
  let failed = strayErrors;
  for (const module of modules) {
    if (module.errors().length > 0) failed++;
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      if (state === 'passed') passed++;
      else if (state === 'skipped') skipped++;
      else failed++; // failed, or never finished
    }
  }
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/** Vitest reporter that prints {@link plainSummary} after the default reporter's own summary. */
export default class PlainSummary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    process.stdout.write(`\n${plainSummary(modules, unhandledErrors.length)}\n`);
  }
}
