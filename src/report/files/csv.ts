import { PLACE_STATES, type Estimate, type Results } from '../../study/simulate/results.js';

type Cell = string | number | null;

/** Comma-separated text by RFC 4180, but with bare line feeds: a head, then rows; empty where null. */
export function csv(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [head, ...rows].map((row) => row.map(field).join(',') + '\n').join('');
}

/**
 * One row a week (or part): what was asked, released and shipped, and the WIP of every site and lane, with
 * intervals.
 */
export function seriesCsv({ series, wip }: Results): string {
  const head = [
    'label',
    'start',
    'working_days',
    'asked_per_day',
    ...spread('released'),
    ...spread('shipped'),
    ...spread('shipped_per_day'),
    ...wip.places.flatMap((place) => spread(`wip ${place.kind} ${place.name}`)),
  ];
  return csv(
    head,
    series.labels.map((label, index) => [
      label,
      series.starts[index] ?? null,
      series.workingDays[index] ?? null,
      series.asked[index] ?? null,
      ...cells(series.released[index]),
      ...cells(series.shipped[index]),
      ...cells(series.shippedPerDay[index]),
      ...wip.places.flatMap((place) => cells(place.series[index])),
    ]),
  );
}

/**
 * One row a station: the share of its place time in every state, 0 to 1, with intervals, and its visits per
 * unit.
 */
export function stationsCsv({ stations }: Results): string {
  const head = [
    'station',
    'site',
    'places',
    ...PLACE_STATES.flatMap((state) => spread(state.replaceAll(' ', '_'))),
    ...spread('visits_per_unit'),
  ];
  return csv(
    head,
    stations.map((station) => [
      station.name,
      station.site,
      station.places,
      ...PLACE_STATES.flatMap((state) => cells(station.share[state])),
      ...cells(station.visitsPerUnit),
    ]),
  );
}

/**
 * One row a unit: number and name, due date, dates of shipping (P50, P80, P95), lead time in days and chance
 * to be late, with intervals.
 */
export function unitsCsv({ units }: Results): string {
  const dates = (units[0]?.shipped ?? []).flatMap(({ p }) => [
    `shipped_p${p * 100}`,
    `shipped_p${p * 100}_low`,
    `shipped_p${p * 100}_high`,
  ]);
  return csv(
    ['unit', 'build', 'due', ...dates, ...spread('lead_days'), 'late_share', 'late_low', 'late_high'],
    units.map((unit) => [
      unit.number,
      unit.build,
      unit.due,
      ...unit.shipped.flatMap(({ date, low, high }) => [date, low, high]),
      ...cells(unit.leadDays),
      unit.late?.share ?? null,
      unit.late?.low ?? null,
      unit.late?.high ?? null,
    ]),
  );
}

/** One row a replication, for statistics of the reader's own. */
export function runsCsv({ runs }: Results): string {
  const head = [
    'replication',
    'shipped',
    'scrapped',
    'held_per_day',
    'wip',
    'lead_mean_days',
    'lead_p50_days',
    'lead_p90_days',
    'last_shipped',
    'bottleneck',
  ];
  return csv(
    head,
    runs.map((run) => [
      run.replication,
      run.shipped,
      run.scrapped,
      run.heldPerDay,
      run.wip,
      run.leadMeanDays,
      run.leadP50Days,
      run.leadP90Days,
      run.lastShipped,
      run.bottleneck,
    ]),
  );
}

function spread(name: string): string[] {
  return [`${name}_mean`, `${name}_low`, `${name}_high`];
}

function cells(estimate: Estimate | undefined): Cell[] {
  return estimate === undefined ? [null, null, null] : [estimate.mean, estimate.low, estimate.high];
}

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(Number(cell.toPrecision(10)));
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
