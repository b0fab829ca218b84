// `npm run coverage -- SCENARIO ..`, in the root of the repository: how often the intervals of `simulate` hold the truth.
import { readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { PRECISION_MEASURES } from '../../src/study/answer/precision-measures.js';
import { type Built, coverStudies } from './studies.js';
import { coverageTable, totals } from './table.js';

const WORST = 30;
const USAGE = `npm run coverage -- SCENARIO [--studies 300] [--replications 20] [--seed cov] [--workers 1]
  [--precision 0.01 --of ${PRECISION_MEASURES.join(',')} --most 1000] [--level 0.95] [--plain]
--precision: each study goes on until these measures are known to that relative error
--plain: Student's intervals of the same replications beside it; takes each replication by itself`;

// What is asked wrongly is said in a line.
process.on('uncaughtException', (error) => {
  process.stderr.write(`${error.message}\n`);
  process.exit(2);
});

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    studies: { type: 'string', default: '300' },
    replications: { type: 'string', default: '20' },
    seed: { type: 'string', default: 'cov' },
    workers: { type: 'string', default: '1' },
    precision: { type: 'string' },
    of: { type: 'string', default: 'throughput' },
    most: { type: 'string', default: '1000' },
    level: { type: 'string', default: '0.95' },
    plain: { type: 'boolean', default: false },
  },
});
const [file] = positionals;
if (file === undefined || positionals.length > 1)
  throw new Error(`coverage: expected one scenario\n${USAGE}`);

const library = pathToFileURL(join(process.cwd(), 'dist/study/library.js')).href,
  built = (await import(library)) as Built,
  { scenario, problems } = built.readScenario(readFileSync(file, 'utf8'), file, (path) =>
    readFileSync(resolve(dirname(file), path), 'utf8'),
  );
if (scenario === undefined) throw new Error(problems.map(built.sayProblem).join('\n'));

const whole = (name: 'studies' | 'replications' | 'workers' | 'most'): number => {
  const value = Number(values[name]);
  if (!Number.isSafeInteger(value) || value < 1)
    throw new Error(`--${name}: expected a whole number from 1, got ${values[name]}`);
  return value;
};
const studies = whole('studies');
const { coverage, truth, plain } = await coverStudies(built, {
  scenario,
  file: basename(file),
  seed: values.seed,
  level: Number(values.level),
  studies,
  replications: whole('replications'),
  workers: whole('workers'),
  plain: values.plain,
  precision:
    values.precision === undefined
      ? undefined
      : {
          asked: Number(values.precision),
          of: PRECISION_MEASURES.filter((measure) => values.of.split(',').includes(measure)),
          most: whole('most'),
        },
  onStudy: (done, replications) => {
    if (done % 20 === 0 || done === studies)
      process.stderr.write(`${done} of ${studies} studies, the last of ${replications} replications\n`);
  },
});

const byMeasure = coverage.byMeasure(truth),
  byPath = coverage.byPath(truth),
  print = (text: string): void => void process.stdout.write(`${text}\n`);
print(`${basename(file)}, ${studies} studies, seed ${values.seed}; per cent, ± one standard error\n`);
print(coverageTable(byMeasure, plain?.coverage.byMeasure(plain.truth)));
print(`\n${totals(byPath)}`);
print(`\nthe ${WORST} single estimates that held least`);
const worst = byPath.filter(({ told }) => told >= studies / 3).sort((a, b) => a.share - b.share);
print(coverageTable(worst.slice(0, WORST)));
