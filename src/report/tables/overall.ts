import { assumptionTable } from './assumptions.js';
import type { Estimate, Results } from '../../study/simulate/results.js';
import { asEstimate, intervalName, number, short } from '../../study/format.js';
import { byMoment, momentaryTime } from './bottlenecks.js';
import { costsTable } from './costs.js';
import { suppliesTable } from './supplies.js';
import { qualityTables } from './quality.js';
import { crews, overtimeTable, shutdownTable } from './crews.js';
import { unitDates } from './units.js';
import { failures, outages } from './failures.js';
import { pulseLines } from './pulse-lines.js';
import { STATE_ORDER } from '../style.js';
import { changeoverTable } from './changeovers.js';

/** A table of the page: the first cell of a row names the row. `note` explains what the cells are. */
export interface PageTable {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** All tables that have a row, in the order of the page. */
export function pageTables(results: Results): PageTable[] {
  const interval =
    results.replications < 2 ? 'no interval, 1 replication' : `in brackets: ${intervalName(results.level)}`;
  const tables = [
    rates(results, interval),
    costsTable(results, interval),
    wip(results, interval),
    bottlenecks(results, interval),
    momentary(results, interval),
    stations(results, interval),
    changeoverTable(results, interval),
    crews(results, interval),
    overtimeTable(results, interval),
    shutdownTable(results),
    inspections(results, interval),
    ...qualityTables(results, interval),
    lanes(results, interval),
    carriers(results, interval),
    teams(results, interval),
    feeders(results, interval),
    suppliesTable(results, interval),
    buffers(results, interval),
    unitDates(results),
    failures(results, interval),
    outages(results, interval),
    pulseLines(results, interval),
    assumptionTable(results.assumptions),
  ];
  return tables.filter((table) => table.rows.length > 0);
}

const percent = (share: Estimate): string => short(share, 100);

function rates(
  { throughput, leadTime, scrapped, due, rty, wip: { total } }: Results,
  interval: string,
): PageTable {
  return {
    id: 'overall',
    title: 'Overall',
    note: `Means over replications; ${interval}.`,
    head: ['Measure', 'Value'],
    rows: [
      ['shipped, units a working day, whole run', short(throughput.perDay)],
      ['shipped, units an hour of the clock, whole run', short(throughput.perHour)],
      ['WIP, units', short(total)],
      ['lead time mean, days', short(leadTime.mean)],
      ['lead time P50, days', short(leadTime.p50)],
      ['lead time P90, days', short(leadTime.p90)],
      ['scrapped, units', short(scrapped)],
      ...(due === null
        ? []
        : [
            ['late, % of units due', percent(due.late)],
            ['days late, mean of those shipped late', short(due.daysLate)],
          ]),
      ...(rty === null ? [] : [['rolled throughput yield (RTY), %', percent(rty)]]),
    ],
  };
}

function wip({ wip: { places } }: Results, interval: string): PageTable {
  return {
    id: 'wip',
    title: 'WIP by site and lane',
    note: `Mean units inside; ${interval}.`,
    head: ['Place', 'Kind', 'Units'],
    rows: places.map((place) => [place.name, place.kind, short(place.mean)]),
  };
}

function bottlenecks(results: Results, interval: string): PageTable {
  return {
    id: 'bottlenecks',
    title: 'Bottlenecks',
    note:
      'The bottleneck of a replication is what has the highest utilisation, active time over time ' +
      `on shift; share of replications with its Wilson interval; ${interval}. By arithmetic: ` +
      `${results.bottleneckByArithmetic ?? 'nothing limits'}.`,
    head: [
      'Name',
      'Kind',
      'Site',
      'Bottleneck, % of replications',
      'Utilisation, %',
      'Mean active period, h',
    ],
    rows: results.bottlenecks.map((each) => [
      each.name,
      each.kind,
      each.site,
      percent(asEstimate(each.share)),
      percent(each.active),
      short(each.activePeriodHours),
    ]),
  };
}

/** What was the bottleneck of a moment for at least a thousandth of the time, the most first. */
function momentary(results: Results, interval: string): PageTable {
  const { replications } = results,
    found = byMoment(results).filter((each) => momentaryTime(each) >= 0.001);
  const followed = found[0]?.sole.n ?? 0,
    over = followed < replications ? `, in ${followed} of ${replications} replications` : '';
  return {
    id: 'momentary',
    title: 'Bottleneck of the moment',
    note:
      'At each moment, what has the longest active period going on (Roser, Nakano & Tanaka 2002): ' +
      'share of the time observed as the only one, and while it moves on to or from ' +
      `another${over}; ${interval}.`,
    head: ['Name', 'Kind', 'Site', 'Sole, % of time', 'Shifting, % of time'],
    rows: found.map((each) => [each.name, each.kind, each.site, percent(each.sole), percent(each.shifting)]),
  };
}

function stations(results: Results, interval: string): PageTable {
  return {
    id: 'stations',
    title: 'Stations',
    note: `Share of place time in per cent, each row adds to 100; ${interval}.`,
    head: ['Station', 'Site', 'Places', ...STATE_ORDER.map((state) => `${state}, %`), 'Visits per unit'],
    rows: results.stations.map((each) => [
      each.name,
      each.site,
      String(each.places),
      ...STATE_ORDER.map((state) => percent(each.share[state])),
      short(each.visitsPerUnit),
    ]),
  };
}

function inspections(results: Results, interval: string): PageTable {
  return {
    id: 'inspections',
    title: 'Inspections',
    note: `First-time-through counts first visits only; the other figures are per 100 visits; ${interval}.`,
    head: [
      'Inspection',
      'Site',
      'First-time-through, %',
      'Inspected per unit',
      'Sent back',
      'Repaired',
      'Scrapped',
      'Escaped',
    ],
    rows: results.inspections.map((each) => [
      each.name,
      each.site,
      percent(each.ftt),
      short(each.inspectedPerUnit),
      short(each.sentBackPer100),
      short(each.repairedPer100),
      short(each.scrappedPer100),
      short(each.escapedPer100),
    ]),
  };
}

function lanes(results: Results, interval: string): PageTable {
  return {
    id: 'lanes',
    title: 'Lanes',
    note:
      'Fill: share of truck spaces used; wait: for a truck; busy: away and not blocked; blocked: ' +
      `waiting for room at the other end; free: at base; ${interval}.`,
    head: ['Lane', 'Trips', 'Fill, %', 'Wait, h', 'Trucks busy, %', 'Blocked, %', 'Free, %'],
    rows: results.lanes.map((lane) => [
      lane.name,
      short(lane.trips),
      percent(lane.fill),
      short(lane.waitHours),
      percent(lane.truckBusy),
      percent(lane.truckBlocked),
      percent(lane.truckFree),
    ]),
  };
}

function carriers(results: Results, interval: string): PageTable {
  return {
    id: 'carriers',
    title: 'Carriers',
    note:
      'Mean numbers with units, on the way back and free; hold: mean time with one unit, the way ' +
      `back not included; ${interval}.`,
    head: [
      'Carriers',
      'Site',
      'Count',
      'In use',
      'On the way back',
      'Free',
      'None free, % of time',
      'Hold, h',
    ],
    rows: results.carriers.map((each) => [
      each.name,
      each.site,
      number(each.count),
      short(each.inUse),
      short(each.comingBack),
      short(each.free),
      percent(each.noneFree),
      short(each.holdHours),
    ]),
  };
}

function teams(results: Results, interval: string): PageTable {
  return {
    id: 'teams',
    title: 'Teams',
    note:
      'Mean number of such teams with units; hold: mean time with one unit, nights included; ' +
      `${interval}.`,
    head: ['Team', 'Site', 'Crew', 'People', 'In use', 'Hold, h'],
    rows: results.teams.map((each) => [
      each.name,
      each.site,
      each.crew,
      number(each.people),
      short(each.inUse),
      short(each.holdHours),
    ]),
  };
}

function feeders(results: Results, interval: string): PageTable {
  return {
    id: 'feeders',
    title: 'Feeders',
    note: `Out: share of time without a finished sub-assembly; ${interval}.`,
    head: ['Feeder', 'Target stock', 'Mean stock', 'Out, % of time'],
    rows: results.feeders.map((feeder) => [
      feeder.name,
      number(feeder.target),
      short(feeder.stock),
      percent(feeder.out),
    ]),
  };
}

function buffers(results: Results, interval: string): PageTable {
  return {
    id: 'buffers',
    title: 'Buffers and banks',
    note: `Full: share of time without a free space; ${interval}.`,
    head: ['Name', 'Kind', 'Site', 'Spaces', 'Mean units', 'Full, % of time'],
    rows: results.buffers.map((each) => [
      each.name,
      each.kind,
      each.site,
      each.spaces === null ? 'unlimited' : String(each.spaces),
      short(each.mean),
      each.full === null ? (each.spaces === null ? 'never' : 'not known') : percent(each.full),
    ]),
  };
}
