import { takeAssumptions } from './assumptions.js';
import { crossFindings } from './cross.js';
import { nameFindings } from './names.js';
import { parseYaml } from './parse-yaml.js';
import { findingsOf } from './problem-zod.js';
import { sayPath, sortProblems, type Problem } from './problem.js';
import type { Scenario } from './scenario.js';
import { scenarioSchema } from './schema.js';
import { observedReader } from './time-observed.js';

export type ReadResult = { readonly scenario: Scenario; readonly problems?: undefined } | { readonly scenario?: undefined; readonly problems: readonly Problem[] };

/**
 * Reads a scenario file: a scenario without any problem, or all problems that could be found, sorted by line.
 * `file` is only for the messages. `readFile` is called for CSV files of observed times, with paths as written in the
 * scenario (relative to its folder), and may throw. Never throws itself.
 */
export function readScenario(text: string, file: string, readFile: (relativePath: string) => string): ReadResult {
  const parsed = parseYaml(text, file);
  if (parsed.value === undefined) return { problems: sortProblems(parsed.problems, file) };

  const taken = takeAssumptions(parsed.value);
  // The schema is used once, so compiling it first would cost more than it saves.
  const result = scenarioSchema(observedReader(readFile)).safeParse(taken.value, { jitless: true });
  const shape = result.success ? [] : findingsOf(result.error.issues, taken.value);
  const names = nameFindings(taken.value, shape);
  const cross = result.success ? crossFindings(result.data, names.length === 0) : [];
  const faulty = new Set(parsed.problems.map(({ path }) => path));
  const inFile = [...shape, ...names, ...cross].map((finding) => ({ ...finding, path: taken.pathInFile(finding.path, finding.atKey) }));
  const findings = [...taken.findings, ...inFile].filter(({ path }) => path.length === 0 || !faulty.has(sayPath(path)));
  const problems = [...parsed.problems, ...findings.map(parsed.place)];
  if (result.success && problems.length === 0) return { scenario: { ...result.data, assumptions: taken.assumptions } };
  return { problems: sortProblems(problems, file) };
}
