import { CARRIER, equipmentOf } from '../../flow/model/resources.js';
import type { Observation } from '../../measure/observe.js';
import type { CapacityRow } from '../capacity/capacity.js';
import { changeover } from '../capacity/changeovers.js';
import { dailyMinutes } from '../capacity/days.js';
import { demand, firstVisits } from '../capacity/demand.js';
import { availability } from '../capacity/station.js';
import type { Planned } from '../sample/planned.js';
import { PLACE_STATES, type PlaceState } from '../sections/stations.js';
import { sumOf } from '../statistics/sums.js';

/** Units a working day lost to each cause in a replication, by cause. */
export type Rungs = Readonly<Record<string, number>>;

/**
 * A constraint's losses are reckoned in one replication of `days` working days, in which so much was shipped.
 */
export type RungsOf = (seen: Observation, days: number, shippedPerDay: number) => Rungs;

type Of = Pick<Planned, 'model' | 'scenario'>;

/**
 * How the losses of a constraint are reckoned; null where arithmetic sets it no limit in minutes or parts.
 */
export function rungsOf(plan: Of, row: CapacityRow): RungsOf | null {
  if (row.capacityPerDay === null || row.capacityPerDay <= 0) return null;
  const { model } = plan,
    named = (names: readonly string[], sites: Int32Array): number =>
      names.findIndex((name, id) => name === row.name && model.siteNames[sites[id]] === row.site);
  switch (row.kind) {
    case 'station':
      return stationRungs(plan, row, row.capacityPerDay, named(model.stations.names, model.stations.site));
    case 'crew':
      return crewRungs(plan, row, row.capacityPerDay, named(model.resources.names, model.resources.site));
    case 'equipment':
      return equipmentRungs(
        row,
        row.capacityPerDay,
        equipmentOf(model.resources).indexOf(named(model.resources.names, model.resources.site)),
      );
    case 'carrier':
      return carrierRungs(plan, row, row.capacityPerDay, model.companions.names.indexOf(row.name));
    case 'lane':
      return laneRungs(plan, row, row.capacityPerDay, model.lanes.names.indexOf(row.name));
    case 'supply':
      return supplyRungs(
        row,
        row.capacityPerDay,
        model.supplies.resource.indexOf(named(model.resources.names, model.resources.site)),
      );
    case 'feeder':
      return null;
  }
}

function stationRungs(plan: Of, row: CapacityRow, capacity: number, station: number): RungsOf {
  const { model, scenario } = plan,
    { stations, steps, sideBySide } = model,
    asks = demand(model),
    here = Array.from(steps.station.keys()).filter(
      (step) => steps.station[step] === station && sideBySide.group[step] < 0,
    );
  // Arithmetic counts a lot as one; its places are booked one by one.
  const many = stations.lotMost[station] > 0 ? stations.places[station] : 1,
    available = row.availableMinutesPerDay * many,
    aUnit = available / capacity,
    planned = row.minutesPerUnit * many,
    fit = planned * availability(model, station, dailyMinutes(model, scenario)),
    share = stations.lotMost[station] > 0 ? many / Math.min(stations.lotMost[station], many) : 1,
    change = sumOf(here, (step) => changeover(model, asks, step)) * share,
    task = fit - change,
    visits = row.visitsPerUnit,
    aVisit = visits > 0 ? task / visits : 0,
    first = sumOf(here, (step) => Math.min(asks.visits[step], firstVisits(model, asks, step)));
  return (seen, days, shipped) => {
    const aDay = (seen.minutes * stations.places[station]) / days,
      minutes = (state: PlaceState): number =>
        seen.stationShares[station * PLACE_STATES.length + PLACE_STATES.indexOf(state)] * aDay,
      begun = sumOf(here, (step) => seen.stepVisits[step]) / days,
      again = sumOf(here, (step) => Math.min(seen.visitsAgain[step], seen.stepVisits[step])) / days,
      lost = (minutesADay: number): number => minutesADay / aUnit;
    return {
      'hours and overtime unlike an average week': lost(available - (aDay - minutes('off shift'))),
      'starved, no unit to work on': lost(minutes('starved')),
      'blocked, no room ahead': lost(minutes('blocked') - (aUnit - planned) * shipped),
      'short of crew': lost(minutes('short of crew')),
      'short of parts': lost(minutes('short of parts')),
      ...(equipmentOf(model.resources).length > 0 && {
        'short of equipment': lost(minutes('short of equipment')),
      }),
      'short of a carrier or team': lost(minutes('short of carrier')),
      'failures and outages beyond the average': lost(minutes('down') - (planned - fit) * shipped),
      'changeovers beyond the average': lost(minutes('changeover') - change * shipped),
      'rework beyond the average': lost((again - (visits - first) * shipped) * aVisit),
      'work and process times beyond the average': lost(
        minutes('working') + minutes('unattended') - begun * aVisit,
      ),
      'units done here, not yet out': lost((begun - again - first * shipped) * aVisit),
    };
  };
}

function crewRungs({ model, scenario }: Of, row: CapacityRow, capacity: number, crew: number): RungsOf {
  const aUnit = row.availableMinutesPerDay / capacity,
    // Whom no step can ask for, arithmetic leaves out; so are they here, in all weeks.
    asked = row.availableMinutesPerDay / dailyMinutes(model, scenario).ofCrew(crew, 1);
  return ({ crewTime, crewBusy }, days, shipped) => {
    const usual = (asked * crewTime.usual[crew]) / days,
      overtime = (asked * crewTime.overtime[crew]) / days,
      engaged = crewBusy[crew] * (crewTime.usual[crew] / days + crewTime.overtime[crew] / days),
      lost = (minutesADay: number): number => minutesADay / aUnit;
    return {
      'people and hours unlike an average week': lost(row.availableMinutesPerDay - usual),
      'overtime worked': lost(-overtime),
      'idle, nothing to work on': lost(usual + overtime - engaged),
      'work and rework beyond the average, units not yet out': lost(engaged - aUnit * shipped),
    };
  };
}

function equipmentRungs(row: CapacityRow, capacity: number, equipment: number): RungsOf {
  const aUnit = row.availableMinutesPerDay / capacity;
  return ({ equipment: { used, there } }, days, shipped) => {
    const lost = (minutesADay: number): number => minutesADay / aUnit;
    return {
      'hours unlike an average week': lost(row.availableMinutesPerDay - there[equipment] / days),
      'free, nobody asked for it': lost((there[equipment] - used[equipment]) / days),
      'work, rework and failures beyond the average, units not yet out': lost(
        used[equipment] / days - aUnit * shipped,
      ),
    };
  };
}

function carrierRungs({ model }: Of, row: CapacityRow, capacity: number, companion: number): RungsOf {
  const aUnit = row.availableMinutesPerDay / capacity,
    resource = model.companions.resource[companion],
    count = model.resources.kind[resource] === CARRIER ? model.resources.amount[resource] : 0;
  return ({ minutes, kept, stockMean }, days, shipped) => {
    const aDay = minutes / days,
      lost = (minutesADay: number): number => minutesADay / aUnit;
    return {
      'days unlike an average week': lost(row.availableMinutesPerDay - count * aDay),
      'free, no unit asked for one': lost(stockMean[resource] * aDay),
      'held while units wait, are blocked, stand overnight': lost(
        (kept.held[companion] + kept.coming[companion]) * aDay - aUnit * shipped,
      ),
    };
  };
}

function laneRungs({ model }: Of, row: CapacityRow, capacity: number, lane: number): RungsOf {
  const { lanes } = model,
    spaces = lanes.capacity[lane],
    possible = (capacity * row.visitsPerUnit) / spaces,
    trip = row.visitsPerUnit > 0 ? (row.minutesPerUnit * spaces) / row.visitsPerUnit : 0;
  return ({ lanes: seen, minutes }, days, shipped) => {
    const trips = seen.trips[lane] / days,
      carried = seen.carried[lane] / days,
      lost = (units: number): number => units / row.visitsPerUnit;
    const beyond = {
      'truck spaces left empty': lost(trips * spaces - carried),
      'units carried, not yet out': lost(carried - row.visitsPerUnit * shipped),
    };
    if (lanes.timetable[lane].length > 0)
      return {
        'departures without a truck or a load': lost((possible - trips) * spaces),
        ...beyond,
      };
    const truckDay = (minutes * lanes.trucks[lane]) / days,
      perTrip = (share: number): number => (trip > 0 ? ((share * truckDay) / trip) * spaces : 0);
    const blocked = perTrip(seen.truckBlocked[lane]),
      free = perTrip(seen.truckFree[lane]);
    return {
      'trucks blocked, no room at the other end': lost(blocked),
      'trucks waiting for a load or their departure': lost(free),
      'longer trips, hours unlike an average week': lost((possible - trips) * spaces - blocked - free),
      ...beyond,
    };
  };
}

function supplyRungs(row: CapacityRow, capacity: number, supply: number): RungsOf {
  const aUnit = row.visitsPerUnit;
  return ({ supplies: seen }, days, shipped) => {
    const received = seen.received[supply] / days,
      used = seen.used[supply] / days;
    return {
      'fewer parts came than planned': (capacity * aUnit - received) / aUnit,
      'parts left in stock': (received - used) / aUnit,
      'parts in units not yet out, or used again': (used - aUnit * shipped) / aUnit,
    };
  };
}
