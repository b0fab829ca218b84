import type { Finding, Problem } from '../types/problem.js';
import { isRawMap } from '../values/raw.js';
import { type FileAssumption, takeAssumptions } from './assumptions.js';
import { pathFrom } from './paths.js';
import { parseYaml } from './yaml.js';

/** One YAML file as data. */
export interface Source {
  readonly file: string;
  /** Undefined if the text could not be parsed to the end. */
  readonly value: unknown;
  readonly assumptions: readonly FileAssumption[];
  /** What YAML itself finds wrong; then nothing else is said of the same spot. */
  readonly faults: readonly Problem[];
  /** What is wrong with what is said of values. */
  readonly problems: readonly Problem[];
  /** Adds file and line to what was found wrong in `value` later. */
  readonly place: (finding: Finding) => Problem;
}

/**
 * `folder` is where the file lies, seen from the folder of the scenario; files of observed times and build
 * lists are named from there.
 */
export function readSource(text: string, file: string, folder = '.'): Source {
  const parsed = parseYaml(text, file);
  const { value, assumptions, findings, pathInFile } = takeAssumptions(parsed.value);
  return {
    file,
    assumptions,
    faults: parsed.problems,
    value: folder === '.' ? value : withBuildListFrom(withObservedFrom(value, folder), folder),
    problems: findings.map(parsed.place),
    place: (finding) => parsed.place({ ...finding, path: pathInFile(finding.path, finding.atKey) }),
  };
}

function withBuildListFrom(value: unknown, folder: string): unknown {
  const programme = isRawMap(value) ? value['programme'] : undefined;
  if (!isRawMap(value) || !isRawMap(programme) || typeof programme['build list'] !== 'string') return value;
  return { ...value, programme: { ...programme, 'build list': pathFrom(folder, programme['build list']) } };
}

function withObservedFrom(value: unknown, folder: string): unknown {
  if (Array.isArray(value)) return value.map((item) => withObservedFrom(item, folder));
  if (!isRawMap(value)) return value;
  const isObserved = typeof value['observed'] === 'string' && 'column' in value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      isObserved && key === 'observed' ? pathFrom(folder, String(inner)) : withObservedFrom(inner, folder),
    ]),
  );
}
