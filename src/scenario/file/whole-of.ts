import { type Whole, withIncludes } from './include/include.js';
import { readSource } from './source.js';

interface Known {
  readonly text: string;
  readonly file: string;
  readonly whole: Whole;
}
const last = new WeakMap<(relativePath: string) => string, Known>();

/**
 * A scenario file with all that it includes. The last text is taken apart once for each way to read files,
 * which must give the same for the same name: a study asks for the scenario, its data, and where keys stand.
 */
export function wholeOf(text: string, file: string, readFile: (relativePath: string) => string): Whole {
  const before = last.get(readFile);
  if (before?.text === text && before.file === file) return before.whole;
  const whole = withIncludes(readSource(text, file), readFile);
  last.set(readFile, { text, file, whole });
  return whole;
}
