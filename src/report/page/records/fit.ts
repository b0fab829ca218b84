import type { FitResults, StepResult } from '../../../study/fit/results.js';
import { count, exact, number } from '../../../study/format.js';
import { filled } from '../../columns.js';
import { fitFirst } from '../../first/fit.js';
import type { Fact, PageContent } from '../page.js';
import { factorsTold, optionsTable } from './fit-factors.js';
import { leftOutTable, odditiesTable } from './fit-rows.js';
import { candidatesTable, stepsTable, warningsTable } from './fit-steps.js';

/** Steps that are told in sentences; the tables have all. */
const MOST_TOLD = 10;

const notesOf = (step: StepResult): string[] => [
  ...factorsTold(step),
  ...step.notes,
  ...(step.notWritten === null ? [] : [step.notWritten]),
];

/** One page: whether the times agree with the scenario, how they spread, what speaks against them. */
export function fitPage(results: FitResults): PageContent {
  const { table, scenarioFile, steps, rows, used } = results,
    toLookAt = steps.toSorted((a, b) => a.rank - b.rank);
  return {
    scenario: table,
    first: fitFirst(results),
    losses: [],
    inFull:
      `${count(used, 'time')} of ${count(steps.length, 'step')} in ${table}` +
      (used < rows ? `; ${exact(rows - used)} of ${count(rows, 'row')} left out.` : '; every row is used.'),
    findings: [
      ...toLookAt.slice(0, MOST_TOLD).map(({ step, distribution, mean, n, why }) => {
        return `${step}: ${distribution}, mean ${number(mean.mean)} min of ${count(n, 'time')}. ${why}`;
      }),
      ...(steps.length > MOST_TOLD ? [`And ${exact(steps.length - MOST_TOLD)} more: see Steps below.`] : []),
    ],
    costsAndDates: [],
    values: [],
    assumptions: [
      'The times are taken as they were clocked: working minutes, without breaks and waiting, of people ' +
        'who work as others will.',
      'A run draws each time by itself, and one day like another. Where times drift, or follow from the ' +
        'one before, a warning says so.',
      'Each distribution is the one with the lowest AIC among those that the Anderson-Darling test does ' +
        'not reject; one with a longest time only where no other is nearly as good.',
      ...toLookAt
        .filter((step) => notesOf(step).length > 0)
        .slice(0, MOST_TOLD)
        .map((step) => `${step.step}: ${notesOf(step).join(' ')}`),
    ],
    facts: factsOf(results),
    tables: filled([
      stepsTable(results),
      warningsTable(results, notesOf),
      optionsTable(results),
      candidatesTable(results),
      odditiesTable(results),
      leftOutTable(results),
    ]),
    more:
      'All of these numbers are in results.json beside this page; fitted.yaml is what a scenario includes' +
      `${scenarioFile === null ? ', by names of steps in the main route' : ''}; left-out.csv has the rows ` +
      'that are not used.',
  };
}

function factsOf({
  table,
  tableDigest,
  scenarioFile,
  scenarioDigest,
  seed,
  program,
  version,
}: FitResults): Fact[] {
  return [
    ['File', table],
    ['Digest', tableDigest],
    ...(scenarioFile === null ? [] : ([['Scenario', scenarioFile]] satisfies Fact[])),
    ...(scenarioDigest === null ? [] : ([['Digest of the scenario', scenarioDigest]] satisfies Fact[])),
    ['Seed', seed],
    ['Program', `rateproof ${program}, results version ${version}`],
  ];
}
