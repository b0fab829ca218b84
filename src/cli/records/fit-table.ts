import { basename } from 'node:path';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { prepare } from '../../flow/plan.js';
import type { Mapping } from '../../records/names.js';
import { readTimes } from '../../records/table/clocked.js';
import { readCounts } from '../../records/table/counted.js';
import { numberedTimes } from '../../records/table/numbered.js';
import { readStops, type StopsRead } from '../../records/table/stopped.js';
import { dayText, type TableLine } from '../../records/table/table.js';
import { dayNumber } from '../../scenario/calendar/date.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { byTheClock } from '../../study/chances/spans.js';
import { chanceResults } from '../../study/measured/chances.js';
import { knownLooks, tableCounts } from '../../study/measured/counts.js';
import { failingPlaces, knownStations, minutesOf } from '../../study/measured/failing.js';
import { learningResults } from '../../study/measured/learning.js';
import { stepPlaces } from '../../study/measured/places.js';
import { headOf, type MeasuredResults } from '../../study/measured/results.js';
import { type StopsAsked, stopsResults } from '../../study/measured/stops.js';
import { modelFrom } from '../../study/validate/start/standing-start.js';
import { dataOf, loadScenario } from '../load.js';
import { expectRows, type FitRequest, onlyOfLogs } from './fit-request.js';
import { readNames } from './names-file.js';
import { loadTable, readable } from './table-file.js';

/** Chances, learning or stops of a table. */
export async function fitTableOf(request: FitRequest): Promise<MeasuredResults> {
  const {
      table,
      scenario: [file],
      includeFrom,
      seed,
    } = request,
    scenario = file === undefined ? undefined : loadScenario(file, includeFrom).scenario,
    names = request.names === undefined ? undefined : readNames(request.names),
    lines = await loadTable(table),
    name = basename(table),
    of = { table: name, scenarioFile: file === undefined ? null : basename(file), seed };
  if (request.of !== 'stops' && (request.from !== undefined || request.to !== undefined)) throw onlyOfLogs();
  switch (request.of) {
    case 'chances': {
      const known = scenario === undefined ? undefined : knownLooks(scenario),
        read = await readable(table, () => readCounts(lines, request, known, names));
      expectRows(
        table,
        read.looks.length === 0,
        read.rows,
        read.oddities,
        'each row names a step and what was found',
      );
      const { counts, notes } = tableCounts(read, scenario);
      return { ...headOf(read, of, notes), of: 'chances', chances: chanceResults(counts, scenario, name) };
    }
    case 'stops':
      return stopsOf(request, { lines, file, scenario, names }, of);
    default: {
      const columns = { ...request, unit: request.unit ?? 'unit' },
        steps = scenario === undefined ? undefined : stepPlaces(scenario).keys(),
        read = await readable(table, () => numberedTimes(readTimes(lines, columns, steps, names), lines));
      expectRows(
        table,
        read.steps.length === 0,
        read.rows,
        read.oddities,
        'each row names a step, a unit and its minutes',
      );
      const steps_ = learningResults(read.steps, scenario, { file: name, seed });
      return { ...headOf(read, of), of: 'learning', steps: steps_ };
    }
  }
}

async function stopsOf(
  request: FitRequest,
  {
    lines,
    file,
    scenario,
    names,
  }: {
    readonly lines: readonly TableLine[];
    readonly file: string | undefined;
    readonly scenario: Scenario | undefined;
    readonly names: Mapping | undefined;
  },
  of: Parameters<typeof headOf>[1],
): Promise<MeasuredResults> {
  const { table, inUse = 1 } = request,
    places =
      file === undefined || scenario === undefined
        ? undefined
        : failingPlaces(scenario, dataOf(file, scenario).value),
    known = places === undefined ? undefined : knownStations(places),
    read = await readable(table, () => readStops(lines, request, known, names));
  expectRows(
    table,
    read.stations.length === 0,
    read.rows,
    read.oddities,
    'each row names a station and a stop',
  );
  const days = daysOf(read),
    begun =
      scenario === undefined || days === undefined
        ? undefined
        : modelFrom(
            scenario,
            Math.min(days.from, request.from === undefined ? Infinity : dayNumber(request.from)),
            Math.max(days.to, request.to === undefined ? -Infinity : dayNumber(request.to)) + 1,
          ),
    calendars = begun === undefined ? [] : prepare(begun.model).calendars,
    startOf = (station: string, day: number): number => {
      const local = day * MINUTES_PER_DAY;
      return known?.clockOf(station)?.instant(local) ?? local;
    };
  const asked: StopsAsked = {
    ...{ file: of.table, places, inUse },
    watch: (station) => ({
      from: request.from === undefined ? undefined : startOf(station, dayNumber(request.from)),
      to: request.to === undefined ? undefined : startOf(station, dayNumber(request.to) + 1),
    }),
    minutesOf: (station) => {
      const place = places?.get(station);
      return begun === undefined || place === undefined
        ? { up: byTheClock, down: byTheClock }
        : minutesOf(station, place, begun, calendars);
    },
  };
  return { ...headOf(read, of), of: 'stops', stations: stopsResults(read, asked) };
}

/** Day numbers of the first and the last time; undefined of a table of minutes. */
function daysOf({ stations }: StopsRead): { readonly from: number; readonly to: number } | undefined {
  const times = stations
    .flatMap(({ stops }) => stops.flatMap(({ from, to }) => [from, to]))
    .filter(Number.isFinite);
  if (times.length === 0) return undefined;
  const dayOf = (at: number): number => dayNumber(dayText(at));
  // A day of slack on either side, for zones.
  return {
    from: dayOf(times.reduce((a, b) => Math.min(a, b))) - 1,
    to: dayOf(times.reduce((a, b) => Math.max(a, b))) + 1,
  };
}
