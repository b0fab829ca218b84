import { intervalName } from '../../study/format.js';
import { A_DAY, unitsEach } from '../../study/planners-unit.js';
import type { Results } from '../../study/simulate/results.js';
import { filled, type PageTable } from '../columns.js';
import { toldConstraint } from '../constraint.js';
import { type Cell, estimated, percent } from '../sheets/cells.js';
import { assumptions } from '../tables/assumptions.js';
import { bottlenecks, momentary } from '../tables/bottlenecks.js';
import { buffers } from '../tables/buffers.js';
import { carriers, teams } from '../tables/carriers.js';
import { changeovers } from '../tables/changeovers.js';
import { costs } from '../tables/costs.js';
import { crews, overtime, shutdowns } from '../tables/crews.js';
import { defects, escapes, holds, rework } from '../tables/defects.js';
import { equipment } from '../tables/equipment.js';
import { comparisons, inspections } from '../tables/inspections.js';
import { failures, outages, recoveries } from '../tables/outages.js';
import { pulseLines } from '../tables/pulse-lines.js';
import { feeders, lanes, stations } from '../tables/stations.js';
import { supplies } from '../tables/supplies.js';
import { units } from '../tables/units.js';
import { constraintTables } from './constraint.js';
import { inputsDrawn, inputsTable } from './inputs.js';
import { guessesTable } from './rests.js';

/** In the order of the page, behind what stops the build. `interval` says what stands in the brackets. */
const TABLES: readonly ((results: Results, interval: string) => PageTable)[] = [
  bottlenecks,
  momentary,
  costs,
  wip,
  stations,
  changeovers,
  crews,
  equipment,
  overtime,
  shutdowns,
  inspections,
  defects,
  escapes,
  holds,
  comparisons,
  rework,
  lanes,
  carriers,
  teams,
  feeders,
  supplies,
  buffers,
  units,
  failures,
  outages,
  recoveries,
  pulseLines,
  assumptions,
];

/** All tables of a simulate study that have a row. */
export function pageTables(results: Results): PageTable[] {
  const { replications, level, standstill } = results,
    brackets = replications < 2 ? 'no interval, 1 replication' : `in brackets: ${intervalName(level)}`,
    interval = standstill === null ? brackets : `${brackets}; ${standstill.note}`;
  return filled([
    overall(results, interval),
    ...constraintTables(toldConstraint(results)),
    inputsTable(results),
    inputsDrawn(results),
    guessesTable(results.weakest),
    ...TABLES.map((table) => table(results, interval)),
  ]);
}

function overall(
  { throughput, leadTime, scrapped, due, rty, wip: { total }, rateUnit }: Results,
  interval: string,
): PageTable {
  return {
    id: 'overall',
    title: 'Overall',
    note: `Means over replications, P50 and P90 over the units of all of them; ${interval}.`,
    head: ['Measure', 'Value'],
    rows: [
      ...shippedRows(throughput, rateUnit),
      ['shipped, units an hour of the clock, whole run', estimated(throughput.perHour)],
      ['WIP, units', estimated(total)],
      ['lead time mean, days', estimated(leadTime.mean)],
      ['lead time P50 of all units, days', estimated(leadTime.p50)],
      ['lead time P90 of all units, days', estimated(leadTime.p90)],
      ['scrapped, units', estimated(scrapped)],
      ...(due === null
        ? []
        : [
            ['late, % of units due', percent(due.late)],
            ['mean days late, late units only', estimated(due.daysLate)],
          ]),
      ...(rty === null ? [] : [['rolled throughput yield (RTY), %', percent(rty)]]),
    ],
  };
}

/** In the planner's unit, and by the working day where that is another. */
function shippedRows({ perDay }: Results['throughput'], unit: Results['rateUnit']): Cell[][] {
  const by = (each: Results['rateUnit']): Cell[] => [
    `shipped, ${unitsEach(each)}, whole run`,
    estimated(perDay, each.workingDays),
  ];
  return unit.per === 'week' ? [by(unit), by(A_DAY)] : [by(unit)];
}

function wip({ wip: { places } }: Results, interval: string): PageTable {
  return {
    id: 'wip',
    title: 'WIP by site and lane',
    note: `Mean units inside; ${interval}.`,
    head: ['Place', 'Kind', 'Units'],
    rows: places.map((place) => [place.name, place.kind, estimated(place.mean)]),
  };
}
