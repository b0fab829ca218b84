import type { Basis } from '../../scenario/types/scenario.js';
import type { CapacityRow, CapacityTable } from '../../study/capacity/capacity.js';
import { number } from '../../study/format.js';
import { stableJson } from '../json.js';
import { fitColumns } from '../shorten.js';
import { assumptionLine } from '../tables/assumptions.js';
import { type CellColumn, joined, tableOf } from './table.js';

const LONGEST_NAME = 27;

const COLUMNS: readonly CellColumn<CapacityRow>[] = [
  { head: 'name', most: LONGEST_NAME, cell: 'name' },
  { head: 'kind', cell: 'kind' },
  { head: 'site', most: 17, cell: 'site' },
  { head: 'visits', align: 'right', cell: ({ visitsPerUnit }) => number(visitsPerUnit) },
  { head: 'min/unit', align: 'right', cell: (row) => minutes(row, row.minutesPerUnit) },
  { head: 'min/day', align: 'right', cell: (row) => minutes(row, row.availableMinutesPerDay) },
  {
    head: 'per day',
    align: 'right',
    cell: ({ capacityPerDay }) => (capacityPerDay === null ? 'no limit' : number(capacityPerDay)),
  },
  { head: 'load', align: 'right', cell: loadText },
];

const LEGEND = [
  'visits, min/unit: means for each unit released; rework, samples, options and scrap are in them',
  'min/day: of all its places, people or trucks in a working day; per day: units that these carry',
  'chance and blocking take more away: `rateproof simulate` shows how much',
];

const CARRIER_LEGEND =
  'carrier: only step times, trips and the way back, no waits; no more than this are carried';

/**
 * The capacity table as aligned plain text of at most 100 columns without a line end at the end: first the
 * bottleneck by arithmetic and the highest rate, then every station, crew, lane, feeder and supply, the
 * tightest first.
 */
export function capacityTable(
  found: CapacityTable,
  scenario: string,
  assumptions: readonly { readonly basis: Basis }[] = [],
): string {
  return joined([
    verdict(found),
    `scenario: ${scenario}`,
    ...assumptionLine(assumptions),
    '',
    tableOf(tightestFirst(found.rows), COLUMNS),
    '',
    ...LEGEND,
    ...(found.rows.some(({ kind }) => kind === 'carrier') ? [CARRIER_LEGEND] : []),
    ...(found.note === null ? [] : [found.note]),
  ]);
}

/**
 * The same as JSON, rows in the order of the scenario. A load without bound (asked of what has no capacity at
 * all) is null, with a capacity of 0.
 */
export function capacityJson(
  found: CapacityTable,
  scenario: { readonly name: string; readonly file: string },
): string {
  const finite = (row: CapacityRow): CapacityRow => (row.load === Infinity ? { ...row, load: null } : row);
  return stableJson({
    format: 'rateproof capacity',
    version: 1,
    scenario,
    ...found,
    rows: found.rows.map(finite),
    bottleneck: found.bottleneck === null ? null : finite(found.bottleneck),
  });
}

function verdict({ bottleneck, highestRatePerDay, askedPerDay }: CapacityTable): string {
  const asked = askedPerDay === null ? '' : `, ${number(askedPerDay)} asked`;
  if (bottleneck === null || highestRatePerDay === null)
    return `bottleneck by arithmetic: none, nothing limits the rate${asked}`;
  return (
    `bottleneck by arithmetic: ${fitColumns(bottleneck.name, LONGEST_NAME)} ` +
    `(${bottleneck.kind}), at most ${number(highestRatePerDay)} units a working day${asked}`
  );
}

/**
 * By load, which where no rate is asked is the same as by capacity; equals stay in the order of the scenario.
 */
function tightestFirst(rows: readonly CapacityRow[]): CapacityRow[] {
  const limit = (row: CapacityRow): number => row.capacityPerDay ?? Number.MAX_VALUE;
  return [...rows].sort((a, b) => limit(a) - limit(b));
}

/** Nobody works at a supply. */
const minutes = ({ kind }: CapacityRow, value: number): string => (kind === 'supply' ? '-' : number(value));

function loadText({ load }: CapacityRow): string {
  return load === null ? '-' : load === Infinity ? 'no end' : `${number(load * 100)} %`;
}
