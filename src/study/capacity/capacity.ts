import { sum } from '../statistics/sums.js';
import type { Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/moments.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { availability, stationMinutes } from './station.js';
import { stayDemands } from './carriers.js';
import { dailyMinutes, type DailyMinutes } from './days.js';
import { demand, type Demand } from './demand.js';
import { supplyLimits } from './supplies.js';

/**
 * What one constraint could carry by itself. All rates count units released a working day of the release
 * calendar.
 */
export interface CapacityRow {
  readonly kind: 'station' | 'crew' | 'carrier' | 'lane' | 'feeder' | 'supply';
  readonly name: string;
  readonly site: string;
  /**
   * Visits (station, lane), steps that want it (crew), times claimed (carrier, team), sub-assemblies begun
   * (feeder), parts used (supply), for each unit released.
   */
  readonly visitsPerUnit: number;
  /**
   * Minutes of one place, person, carrier or truck for each unit released. For a feeder, those of its slowest
   * station or crew; 0 for a supply.
   */
  readonly minutesPerUnit: number;
  /** Minutes of all its places, people, carriers or trucks a working day; 0 for a supply. */
  readonly availableMinutesPerDay: number;
  /** Units a working day; null: no limit. */
  readonly capacityPerDay: number | null;
  /** Asked rate over capacity; null where no rate is asked. */
  readonly load: number | null;
}

export interface CapacityTable {
  /**
   * Stations in the order of the scenario (arrival banks left out), crews, carriers, lanes, feeders,
   * supplies.
   */
  readonly rows: readonly CapacityRow[];
  /** Highest rate asked, units a working day; of drawn arrivals the mean; null for a saturated line. */
  readonly askedPerDay: number | null;
  /** The least capacity: no plan can hold more. null: nothing limits. */
  readonly highestRatePerDay: number | null;
  readonly bottleneck: CapacityRow | null;
  /**
   * What the reader should know about how it was reckoned; one line a note; null: nothing beyond the rules
   * below.
   */
  readonly note: string | null;
}

/**
 * Capacity by arithmetic, without chance in time and without blocking: mean minutes asked for by a unit
 * against minutes there are. Expected visits include rework, sampling, options, escapes, scrap and feeders
 * (see `expectedVisits`).
 *
 * - Days are working days of the release calendar (see `dailyMinutes`).
 * - Crews have the people of each shift, less those who are missing on average. Overtime is left out, and the
 * note says so.
 * - Unattended minutes (last settling, process) count in full against the shift minutes of a station on a
 * calendar, though
 *  some may run through the night: there the capacity is on the safe side. At an unattended station the day
 * has 24 h.
 * - Minutes at a station that fails are divided by its availability (see `availability`), also those of the
 * crew, which stays.
 * - A truck's day is that of its driving hours; loading and unloading are not made to wait for the shifts of
 * the sites.
 * - A carrier's and a team's minutes are a lower bound (see `StayDemand`), so their capacity is an upper one.
 * - A feeder's capacity is that of its slowest station or crew, as if that worked for this feeder alone.
 * - A supply's is what comes in over what a unit takes (see `supplyLimits`).
 */
export function capacity(model: Model, scenario: Scenario): CapacityTable {
  const asks = demand(model);
  const daily = dailyMinutes(model, scenario);
  const asked = askedPerDay(scenario, daily);
  const uses = [
    ...stationUses(model, asks, daily),
    ...crewUses(model, asks, daily),
    ...carrierUses(model, asks, daily),
  ];
  const rows = [
    ...uses.map((use) => row(use, sum(use.minutes), asked, use.most)),
    ...laneRows(model, asks, daily, asked),
    ...feederRows(model, asks, uses, asked),
    ...supplyLimits(model, scenario, daily).map(({ name, site, resource, partsPerDay }) =>
      row(
        { kind: 'supply', name, site, visits: asks.taken[resource], available: 0 },
        0,
        asked,
        partsPerDay / asks.taken[resource],
      ),
    ),
  ];
  let bottleneck: CapacityRow | null = null;
  for (const candidate of rows) {
    if (
      candidate.capacityPerDay !== null &&
      (bottleneck === null || candidate.capacityPerDay < (bottleneck.capacityPerDay ?? Infinity))
    )
      bottleneck = candidate;
  }
  const notes = asks.isExact
    ? []
    : [
        'more than 256 combinations of options: each option was averaged by itself, as if steps ' +
          'chose among them independently',
      ];
  if (Object.values(scenario.calendars).some(({ overtime }) => overtime.length > 0))
    notes.push('overtime is left out: it comes on top');
  if (model.failures.count > 0)
    notes.push('the mean time for which failures hold a station up is in min/unit');
  if (model.outages.count > 0) notes.push('dated outages are left out');
  const note = notes.length === 0 ? null : notes.join('; ');
  return {
    rows,
    askedPerDay: asked,
    highestRatePerDay: bottleneck?.capacityPerDay ?? null,
    bottleneck,
    note,
  };
}

/** A station, a crew or carriers, and the minutes that each route asks of it. */
interface Use {
  readonly kind: 'station' | 'crew' | 'carrier';
  readonly name: string;
  readonly site: string;
  readonly visits: number;
  readonly available: number;
  /** Units a working day that it can pass on, whatever it does with them: a pulse line moves once a takt. */
  readonly most?: number;
  /** By route. */
  readonly minutes: Float64Array;
}

function stationUses(model: Model, asks: Demand, daily: DailyMinutes): Use[] {
  const { stations, steps } = model;
  const uses: Use[] = [];
  for (let station = 0; station < stations.count; station++) {
    if (stations.isBank[station]) continue;
    const minutes = new Float64Array(model.routes.count),
      fit = availability(model, station, daily);
    let visits = 0;
    for (let step = 0; step < steps.count; step++) {
      if (steps.station[step] !== station || model.beside.group[step] >= 0) continue;
      visits += asks.visits[step];
      minutes[steps.route[step]] += stationMinutes(model, asks, step).place / fit;
    }
    // A station with lots has one lot at a time; the minutes are then those of the lot, by unit.
    const atOnce = stations.lotMost[station] > 0 ? 1 : stations.places[station];
    const available = atOnce * daily.of(stations.calendar[station]);
    uses.push({
      kind: 'station',
      name: stations.names[station],
      site: model.siteNames[stations.site[station]],
      visits,
      available,
      minutes,
      most: pulses(model, station, daily),
    });
  }
  return uses;
}

function pulses(
  { pulseLines: { station, stationStart, takt, calendar } }: Model,
  id: number,
  daily: DailyMinutes,
): number {
  const at = station.indexOf(id),
    line = stationStart.findLastIndex((start) => start <= at);
  return at < 0 ? Infinity : daily.of(calendar[line]) / takt[line];
}

function crewUses(model: Model, asks: Demand, daily: DailyMinutes): Use[] {
  const { resources, steps } = model;
  return Array.from({ length: resources.crews }, (_, crew) => {
    const minutes = new Float64Array(model.routes.count);
    let visits = 0;
    for (let step = 0; step < steps.count; step++) {
      for (let n = steps.needStart[step]; n < steps.needStart[step + 1]; n++) {
        if (steps.needResource[n] !== crew) continue;
        visits += asks.visits[step];
        minutes[steps.route[step]] +=
          (steps.needAmount[n] * stationMinutes(model, asks, step).crew) /
          availability(model, steps.station[step], daily);
      }
    }
    for (const { resource, route, amount, holds, minutes: kept } of stayDemands(model, asks)) {
      if (resource !== crew) continue;
      visits += holds;
      minutes[route] += amount * kept;
    }
    const available = daily.ofCrew(crew) ?? resources.amount[crew] * daily.of(resources.calendar[crew]);
    return {
      kind: 'crew',
      name: resources.names[crew],
      site: model.siteNames[resources.site[crew]],
      visits,
      available,
      minutes,
    };
  });
}

function carrierUses(model: Model, asks: Demand, daily: DailyMinutes): Use[] {
  const { resources, siteNames } = model;
  return stayDemands(model, asks)
    .filter(({ isCarrier }) => isCarrier)
    .map(({ resource, route, holds, minutes }) => {
      const byRoute = new Float64Array(model.routes.count);
      byRoute[route] = minutes;
      return {
        kind: 'carrier',
        name: resources.names[resource],
        site: siteNames[resources.site[resource]],
        visits: holds,
        available: resources.amount[resource] * daily.of(-1),
        minutes: byRoute,
      };
    });
}

function laneRows(model: Model, asks: Demand, daily: DailyMinutes, asked: number | null): CapacityRow[] {
  const { lanes, steps, draws } = model;
  const mean = (draw: number): number => (draw < 0 ? 0 : meanOf(draws[draw].distribution));
  return lanes.names.map((name, lane) => {
    const visits = asks.visits.reduce(
      (total, each, step) => (steps.lane[step] === lane ? total + each : total),
      0,
    );
    const trip =
      mean(lanes.loadDraw[lane]) +
      mean(lanes.driveDraw[lane]) +
      mean(lanes.unloadDraw[lane]) +
      mean(lanes.returnDraw[lane]);
    const use = {
      kind: 'lane' as const,
      name,
      site: `${model.siteNames[lanes.from[lane]]} to ${model.siteNames[lanes.to[lane]]}`,
      visits,
      available: lanes.trucks[lane] * daily.of(lanes.driveCalendar[lane]),
    };
    const departures = lanes.timetable[lane].filter((time) => time < daily.spanMinutes).length;
    // At each time as many trucks leave as stand ready at a dock.
    const together = Math.min(lanes.trucks[lane], lanes.docksFrom[lane]);
    const most =
      lanes.timetable[lane].length > 0 && visits > 0
        ? ((departures / daily.workingDays) * together * lanes.capacity[lane]) / visits
        : Infinity;
    return row(use, (visits * trip) / lanes.capacity[lane], asked, most);
  });
}

function feederRows(model: Model, asks: Demand, uses: readonly Use[], asked: number | null): CapacityRow[] {
  const rows: CapacityRow[] = [];
  for (let route = 1; route < model.routes.count; route++) {
    const slowest = uses.reduce<Use | undefined>(
      (worst, use) =>
        worst === undefined || use.minutes[route] * worst.available > worst.minutes[route] * use.available
          ? use
          : worst,
      undefined,
    );
    if (slowest === undefined) continue;
    rows.push(
      row(
        {
          kind: 'feeder',
          name: model.routes.names[route],
          site: slowest.site,
          visits: asks.started[route],
          available: slowest.available,
        },
        slowest.minutes[route],
        asked,
      ),
    );
  }
  return rows;
}

function row(
  use: {
    readonly kind: CapacityRow['kind'];
    readonly name: string;
    readonly site: string;
    readonly visits: number;
    readonly available: number;
  },
  minutes: number,
  asked: number | null,
  most = Infinity,
): CapacityRow {
  const limit = Math.min(most, minutes > 0 ? use.available / minutes : Infinity);
  return {
    kind: use.kind,
    name: use.name,
    site: use.site,
    visitsPerUnit: use.visits,
    minutesPerUnit: minutes,
    availableMinutesPerDay: use.available,
    capacityPerDay: limit === Infinity ? null : limit,
    load: asked === null ? null : limit === 0 ? Infinity : asked / limit,
  };
}

function askedPerDay(scenario: Scenario, daily: DailyMinutes): number | null {
  const { release } = scenario.programme;
  switch (release.kind) {
    case 'rate':
      return askedRate(scenario).highest;
    case 'interval':
      return daily.of(-1) / meanOf(release.interval);
    case 'saturated':
      return null;
  }
}
