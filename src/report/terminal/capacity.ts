import type { Basis } from '../../scenario/types/scenario.js';
import type { CapacityRow, CapacityTable } from '../../study/capacity/capacity.js';
import { exact, number } from '../../study/format.js';
import { inUnit, type PlannersUnit, unitsEach } from '../../study/planners-unit.js';
import type { ListedChange, ListedChanges } from '../../study/priced/listed.js';
import type { ShapeWarning } from '../../study/standstill/warnings.js';
import { stableJson } from '../json.js';
import { assumptionLine } from '../tables/assumptions.js';
import { joined } from './lines.js';
import { type CellColumn, tableOf } from './table.js';

/** A warning, with where it stands: `line.yaml:12:5`, and `route[3].finds.gap.back to`. */
export interface PlacedWarning extends Omit<ShapeWarning, 'path'> {
  readonly at: string;
  readonly path: string;
}

const MOST_WARNINGS = 10;

const columns = (unit: PlannersUnit): readonly CellColumn<CapacityRow>[] => [
  { head: 'name', cell: 'name' },
  { head: 'kind', cell: 'kind' },
  { head: 'site', cell: 'site' },
  { head: 'visits', align: 'right', cell: ({ visitsPerUnit }) => number(visitsPerUnit) },
  { head: 'min/unit', align: 'right', cell: (row) => minutes(row, row.minutesPerUnit) },
  { head: 'min/day', align: 'right', cell: (row) => minutes(row, row.availableMinutesPerDay) },
  {
    head: `per ${unit.per}`,
    align: 'right',
    cell: ({ capacityPerDay: perDay }) => (perDay === null ? 'no limit' : number(inUnit(perDay, unit))),
  },
  { head: 'load', align: 'right', cell: loadText },
];

const changeColumns = (currency: string): readonly CellColumn<ListedChange>[] => [
  { head: 'possible change', cell: 'name' },
  { head: 'what', cell: 'what' },
  { head: `price, ${currency}`, align: 'right', cell: ({ price }) => orNone(price) },
  { head: 'a day', align: 'right', cell: ({ day }) => (day === 0 ? '-' : exact(day)) },
  { head: 'ready after', cell: ({ readyAfter }) => readyAfter ?? 'at once' },
  { head: 'at most', align: 'right', cell: ({ atMost }) => orNone(atMost) },
  { head: 'made', cell: ({ made }) => made ?? '-' },
];
const orNone = (value: number | null): string => (value === null ? '-' : exact(value));

const legend = ({ per }: PlannersUnit): string[] => [
  'visits, min/unit: means for each unit released; rework, samples, options and scrap are in them',
  `min/day: of all its places, people or trucks in a working day; per ${per}: units that these carry`,
  'chance and blocking take more away: `rateproof simulate` shows how much',
];

const MADE_LEGEND = 'what is made is counted in the capacity above, as from the last of its days on';

const STAY_LEGEND =
  '≥: at least, as of carriers and teams only step times, trips and the way back count, no waits; no more ' +
  'units than this are carried';

/**
 * The capacity table as aligned plain text of at most `width` columns without a line end at the end: the
 * bottleneck by arithmetic and the highest rate, then every station, crew, lane, feeder and supply, the
 * tightest first; what could be changed, where the scenario names it.
 */
export function capacityTable(
  found: CapacityTable,
  scenario: string,
  assumptions: readonly { readonly basis: Basis }[] = [],
  width?: number,
  { currency, changes }: ListedChanges = { currency: '', changes: [] },
  warnings: readonly PlacedWarning[] = [],
): string {
  return joined(
    [
      verdict(found),
      `scenario: ${scenario}`,
      ...assumptionLine(assumptions),
      '',
      tableOf(tightestFirst(found.rows), columns(found.rateUnit)),
      '',
      ...legend(found.rateUnit),
      ...stayNotes(found),
      ...(found.note === null ? [] : [found.note]),
      ...(changes.length === 0 ? [] : ['', tableOf(changes, changeColumns(currency))]),
      ...(changes.some(({ made }) => made !== null) ? ['', MADE_LEGEND] : []),
      ...warningLines(warnings),
    ],
    width,
  );
}

/** The first of them: a large scenario may have many. */
function warningLines(warnings: readonly PlacedWarning[]): string[] {
  if (warnings.length === 0) return [];
  const rest = warnings.length - MOST_WARNINGS;
  return [
    '',
    'shapes that may lead to a standstill; `rateproof simulate` shows whether and how often they do:',
    ...warnings
      .slice(0, MOST_WARNINGS)
      .map(({ at, path, text, remedy }) => `warning: ${at} ${path}: ${text}; what rules it out: ${remedy}`),
    ...(rest > 0 ? [`and ${rest} more, with --json`] : []),
  ];
}

/**
 * The same as JSON, rows in the order of the scenario. A load without bound (asked of what has no capacity at
 * all) is null, with a capacity of 0.
 */
export function capacityJson(
  found: CapacityTable,
  scenario: { readonly name: string; readonly file: string },
  warnings: readonly PlacedWarning[] = [],
): string {
  const finite = (row: CapacityRow): CapacityRow => (row.load === Infinity ? { ...row, load: null } : row);
  return stableJson({
    format: 'rateproof capacity',
    version: 1,
    scenario,
    ...found,
    rows: found.rows.map(finite),
    bottleneck: found.bottleneck === null ? null : finite(found.bottleneck),
    warnings,
  });
}

function verdict({ bottleneck, highestRatePerDay, askedPerDay, rateUnit }: CapacityTable): string {
  const asked = askedPerDay === null ? '' : `, ${number(inUnit(askedPerDay, rateUnit))} asked`;
  if (bottleneck === null || highestRatePerDay === null)
    return `bottleneck by arithmetic: none, nothing limits the rate${asked}`;
  return (
    `bottleneck by arithmetic: ${bottleneck.name} ` +
    `(${bottleneck.kind}), at most ${number(inUnit(highestRatePerDay, rateUnit))} ` +
    `${unitsEach(rateUnit)}${asked}`
  );
}

/**
 * By load, which where no rate is asked is the same as by capacity; equals stay in the order of the scenario.
 */
function tightestFirst(rows: readonly CapacityRow[]): CapacityRow[] {
  const limit = (row: CapacityRow): number => row.capacityPerDay ?? Number.MAX_VALUE;
  return [...rows].sort((a, b) => limit(a) - limit(b));
}

/** What is kept by a unit is kept through its waits as well: how long, if it were alone on the floor. */
function stayNotes({ rows }: CapacityTable): string[] {
  const kept = rows.filter(isKept);
  if (kept.length === 0) return [];
  const told = kept.map(({ name, loadAlone }) => `${name} ${number(100 * (loadAlone ?? 0))} %`);
  return [
    STAY_LEGEND,
    'about, with the waits of a unit alone on the floor (nights, timetables, loads to be filled): ' +
      told.join(', '),
  ];
}

const isKept = ({ loadAlone }: CapacityRow): boolean => loadAlone !== null;

/** Nobody works at a supply. */
const minutes = ({ kind }: CapacityRow, value: number): string => (kind === 'supply' ? '-' : number(value));

function loadText(row: CapacityRow): string {
  const { load } = row;
  if (load === null) return '-';
  if (load === Infinity) return 'no end';
  return `${isKept(row) ? '≥ ' : ''}${number(load * 100)} %`;
}
