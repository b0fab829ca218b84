import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { basename } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { LogRead } from '../../records/log/cleaned.js';
import { toldOfLog } from '../../records/log-told.js';
import type { NumberedTimes } from '../../records/table/numbered.js';
import type { TableRead } from '../../records/table/table.js';
import { type FitResults, fitResults } from '../../study/fit/results.js';
import { fitStep } from '../../study/fit/steps.js';
import { exact } from '../../study/format.js';
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
import { placesOf } from './places.js';

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
    places = placesOf(file, scenario),
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
      // Its oddities are told beside.
      ...(floor.read === null ? [] : toldOfLog({ ...floor.read, oddities: [] }).told),
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
  const placeOf = logPlaces(scenario, places.placeOf),
    steps = times.map((each) => fitStep(each, seed, placeOf(each.step))),
    n = times.reduce((sum, { minutes }) => sum + minutes.length, 0),
    digests = { tableDigest: await fileDigest(table), scenarioDigest: places.digest };
  return fitResults({ ...read, rows: n, used: n, steps: times }, steps, { ...head, ...digests }, notes);
}

/** SHA-256 of a file. */
async function fileDigest(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return `sha256:${hash.digest('hex')}`;
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
