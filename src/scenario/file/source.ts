import type { Finding, Problem } from '../types/problem.js';
import { isRawMap } from '../values/raw.js';
import { type FileAssumption, takeAssumptions } from './assumptions.js';
import { A_SCENARIO, type Ours } from './ours.js';
import { pathFrom } from './paths.js';
import { saySeen } from './problem.js';
import { type Parsed, parseYaml } from './yaml.js';

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
export function readSource(text: string, file: string, folder = '.', ours: Ours = A_SCENARIO): Source {
  const parsed = parseYaml(text, file);
  if (!isOurs(parsed, text, ours)) return notOurs(parsed, ours);
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

const isOurs = ({ value }: Parsed, text: string, ours: Ours): boolean =>
  value === undefined ? ours.isInText(text) : ours.isIn(value);

/** Of a file that is something else nothing is quoted. */
function notOurs({ value, problems, isQuoted, place }: Parsed, { wanted }: Ours): Source {
  const seen = value === null || Array.isArray(value) ? saySeen(value) : 'a file that is none',
    told = problems.filter((problem) => !/["'*]/.test(problem.seen ?? '')),
    isTold = value === undefined && !isQuoted && told.length > 0,
    none = { ...place({ path: [], wanted, seen }), line: 1, column: 1 };
  return {
    file: none.file,
    value: undefined,
    assumptions: [],
    faults: isTold ? told : [none],
    problems: [],
    place,
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
