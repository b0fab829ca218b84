import { basename } from 'node:path';
import type { LogRead } from '../../records/log/cleaned.js';
import type { NumberedTimes } from '../../records/table/numbered.js';
import type { TableRead } from '../../records/table/table.js';
import { type FitResults, fitResults } from '../../study/fit/results.js';
import { fitStep } from '../../study/fit/steps.js';
import { count, exact } from '../../study/format.js';
import { chanceResults } from '../../study/measured/chances.js';
import { learningResults } from '../../study/measured/learning.js';
import { readFloor } from '../../study/measured/log/floor.js';
import { latest, MOST_FITTED } from '../../study/measured/log/latest.js';
import { logNotes } from '../../study/measured/log/notes.js';
import { logPlaces } from '../../study/measured/log/steps.js';
import { headOf, type MeasuredResults } from '../../study/measured/results.js';
import { logSource } from '../commands/records/floor-log.js';
import { loadScenario, plannedRun } from '../load.js';
import { UsageError } from '../usage-error.js';
import type { FitRequest } from './fit-request.js';
import { readNames } from './names-file.js';

/** Times, chances or learning of a floor log. */
export async function fitLog(request: FitRequest): Promise<FitResults | MeasuredResults> {
  const {
    table,
    scenario: [file],
    includeFrom,
    seed,
    by,
    from,
    to,
    of,
  } = request;
  if (file === undefined)
    throw new UsageError(
      `expected a scenario FILE beside a floor log, got none: ${table}`,
      'its calendars and names are needed, for example rateproof fit floor.csv line.yaml; a table of times ' +
        'has a column of minutes',
    );
  if (of === 'stops')
    throw new UsageError(
      `--of stops: expected a table of stops, got a floor log, which tells of none: ${table}`,
      'give a table with the columns station,from,to',
    );
  const { scenario } = loadScenario(file, includeFrom),
    unknown = by.find((option) => !Object.hasOwn(scenario.programme.options, option));
  if (unknown !== undefined)
    throw new UsageError(
      `--by: expected an option of the scenario, got ${unknown}`,
      `it has ${Object.keys(scenario.programme.options).join(', ') || 'none'}`,
    );
  const source = logSource(
      table,
      scenario,
      request.names === undefined ? undefined : readNames(request.names),
    ),
    floor = await plannedRun(file, () => readFloor(scenario, source, { from, to, by })),
    name = basename(table),
    head = { table: name, scenarioFile: basename(file), seed },
    read = tableRead(floor.read),
    all = of === 'chances' ? [] : floor.visits.times(of === 'learning'),
    times = of === 'times' ? all.map((each) => latest(each)) : all,
    notes = [
      ...(floor.read === null ? [] : toldOfLog(floor.read)),
      ...logNotes(floor, times, scenario, of),
      ...toldOfMany(all),
    ];
  if (of === 'chances') {
    const chances = chanceResults(floor.trials.counts(floor.from, floor.to), scenario, name);
    if (!floor.hasFinds || chances.length === 0)
      throw new UsageError(
        `${table}: expected finds of inspections, got none`,
        'a log in rows of events tells them as find, with defect=.. among its values; see docs/floor-log.md',
      );
    return { ...headOf(read, head, notes), of, chances };
  }
  if (times.length === 0)
    throw new UsageError(
      `${table}: expected at least one visit with a start and an end, got none`,
      read.oddities[0]?.told ?? 'give other days by --from and --to',
    );
  if (of === 'learning') {
    const steps = learningResults(times, scenario, { file: name, seed, isWhole: true });
    return { ...headOf(read, head, notes), of, steps };
  }
  const placeOf = logPlaces(scenario),
    steps = times.map((each) => ({ ...fitStep(each, seed), ...placeOf(each.step) }));
  const n = times.reduce((sum, { minutes }) => sum + minutes.length, 0);
  return fitResults({ ...read, rows: n, used: n, steps: times }, steps, head, notes);
}

/** Steps without a name in the scenario that are listed. */
const MOST_NAMES = 10;

/** What was read of a log, a line each; what was wrong with its rows are its oddities. */
function toldOfLog({ rows, used, unknownSteps, ignored, encoding, form }: LogRead): string[] {
  return [
    `${count(rows, form === 'OCEL 2.0' ? 'event' : 'row')}, ${exact(used)} used`,
    ...(encoding === 'UTF-8' ? [] : [`the file is ${encoding}, and was read so`]),
    ...(ignored.length === 0 ? [] : [`columns that are not read: ${ignored.join(', ')}`]),
    ...unknownSteps
      .slice(0, MOST_NAMES)
      .map(
        ({ name, count: n, near }) =>
          `the scenario has no step "${name}" (${count(n, 'row')})` +
          (near === undefined ? '' : `, did you mean "${near}"?`),
      ),
    ...(unknownSteps.length > MOST_NAMES ? [`and ${unknownSteps.length - MOST_NAMES} names more`] : []),
  ];
}

/** Steps of which the latest times alone are fitted. */
function toldOfMany(times: readonly NumberedTimes[]): string[] {
  const many = times.filter(({ minutes }) => minutes.length > MOST_FITTED);
  return many.length === 0
    ? []
    : [
        `Distributions are fitted to the latest ${exact(MOST_FITTED)} times: ` +
          `${many.map(({ step, minutes }) => `${step} (of ${exact(minutes.length)})`).join(', ')}.`,
      ];
}

/** Rows of a log are not kept: those left out are counted among the oddities. */
const tableRead = (read: LogRead | null): TableRead & { readonly used: number } => ({
  head: [],
  rows: read?.rows ?? 0,
  used: read?.used ?? 0,
  leftOut: [],
  oddities: read?.oddities ?? [],
});
