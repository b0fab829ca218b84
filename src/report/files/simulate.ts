import { type UnitResult } from '../../study/programme/dates.js';
import { PLACE_STATES, type StationResult } from '../../study/sections/stations.js';
import { type Results } from '../../study/simulate/results.js';
import { CHARTS } from '../charts/of-study.js';
import { toldConstraint } from '../constraint.js';
import { simulatePage } from '../page/studies/simulate.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileColumn, type FileTable, fileTable, measure, proportion } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/**
 * The report of a simulate study, with CSV of the series, the stations, the units, the replications and what
 * stops the build.
 */
export const reportFiles = studyFiles<Results>({
  charts: CHARTS.simulate,
  page: simulatePage,
  data: {
    'series.csv': seriesData,
    'stations.csv': stationsData,
    'units.csv': (results) => (results.units.length > 0 ? unitsData(results) : null),
    'runs.csv': runsData,
    'losses.csv': (results) => lossesData(toldConstraint(results)),
    'trials.csv': (results) => trialsData(toldConstraint(results)),
  },
  sheets: ['series.csv', 'stations.csv', 'units.csv', 'runs.csv'],
});

/**
 * One row a week (or part): what was asked, released and shipped, and the WIP of every site and lane, with
 * intervals.
 */
export function seriesData({ series, wip }: Results): FileTable {
  return fileTable(
    [...series.labels.keys()],
    [
      ['label', (at) => series.labels[at]],
      ['start', (at) => series.starts[at], 'day'],
      ['working_days', (at) => series.workingDays[at]],
      ['asked_per_day', (at) => series.asked[at]],
      ...measure('released', (at: number) => series.released[at]),
      ...measure('shipped', (at: number) => series.shipped[at]),
      ...measure('shipped_per_day', (at: number) => series.shippedPerDay[at]),
      ...wip.places.flatMap((place) =>
        measure(`wip ${place.kind} ${place.name}`, (at: number) => place.series[at]),
      ),
    ],
  );
}

/**
 * One row a station: the share of its place time in every state, 0 to 1, with intervals, and its visits per
 * unit.
 */
export function stationsData({ stations }: Results): FileTable {
  return fileTable(stations, [
    ['station', 'name'],
    ['site', 'site'],
    ['places', 'places'],
    ...PLACE_STATES.filter((state) => stations.some(({ share }) => share[state] !== undefined)).flatMap(
      (state) => measure(state.replaceAll(' ', '_'), ({ share }: StationResult) => share[state], 'share'),
    ),
    ...measure('visits_per_unit', ({ visitsPerUnit }: StationResult) => visitsPerUnit),
  ]);
}

/**
 * One row a unit: number and name, due date, dates of shipping (P50, P80, P95), lead time in days and chance
 * to be late, with intervals.
 */
export function unitsData({ units }: Results): FileTable {
  const dates = [...(units[0]?.shipped ?? []).entries()].flatMap(([at, { p }]): FileColumn<UnitResult>[] => [
    [`shipped_p${p * 100}`, ({ shipped }) => shipped[at]?.date, 'day'],
    [`shipped_p${p * 100}_low`, ({ shipped }) => shipped[at]?.low, 'day'],
    [`shipped_p${p * 100}_high`, ({ shipped }) => shipped[at]?.high, 'day'],
  ]);
  return fileTable(units, [
    ['unit', 'number'],
    ['build', 'build'],
    ['due', 'due', 'day'],
    ...dates,
    ...measure('lead_days', ({ leadDays }: UnitResult) => leadDays),
    ...proportion('late', ({ late }: UnitResult) => late),
  ]);
}

/** One row a replication, for statistics of the reader's own. */
export function runsData({ runs }: Results): FileTable {
  return fileTable(runs, [
    ['replication', 'replication'],
    ['shipped', 'shipped'],
    ['scrapped', 'scrapped'],
    ['held_per_day', 'heldPerDay'],
    ['wip', 'wip'],
    ['lead_mean_days', 'leadMeanDays'],
    ['lead_p50_days', 'leadP50Days'],
    ['lead_p90_days', 'leadP90Days'],
    ['last_shipped', 'lastShipped', 'day'],
    ['bottleneck', 'bottleneck'],
  ]);
}
