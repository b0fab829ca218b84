import type { Model } from '../../flow/model/model.js';
import { equipmentOf } from '../../flow/model/resources.js';
import { laneNamed, named } from '../lists.js';
import { sum, sumOf } from '../statistics/sums.js';
import { carriedMinutes, type StayDemand, stayDemands } from './carriers.js';
import type { DailyMinutes } from './days.js';
import type { Demand } from './demand.js';
import { keptMinutes, repairMinutes } from './equipment.js';
import { meanDraw } from './means.js';
import { spotsOf } from './spots.js';
import { availability, stationMinutes } from './station.js';
import { fullLoad, unitsByTimetable } from './way/departures.js';

export type LimitKind = 'station' | 'crew' | 'equipment' | 'carrier' | 'lane' | 'feeder' | 'supply';

/** What may limit the rate, and what a unit asks of it. */
export interface Limit {
  readonly kind: LimitKind;
  readonly name: string;
  readonly site: string;
  readonly visits: number;
  /** Of one of its places, people, pieces or trucks, per unit. */
  readonly minutes: number;
  /** Of what stays with a unit: the same with its waits when alone, see `StayDemand`. */
  readonly minutesAlone?: number;
  /** Minutes a working day of all of them. */
  readonly available: number;
  /** Units a working day that it can pass on, whatever it does with them: a pulse line moves once a takt. */
  readonly most?: number;
}

/** A station, a crew, equipment or carriers, with the minutes that each route asks of it. */
export interface Use extends Limit {
  readonly byRoute: ReadonlyMap<number, number>;
}

type UseByRoute = Omit<Use, 'minutes' | 'minutesAlone'> & {
  /** By which the waits of a unit alone lengthen what is kept; undefined: nothing is kept. */
  readonly waits?: number;
};

/** Stations but arrival banks, crews, equipment, carriers; `askedPerDay` null: no rate is asked. */
export function usesOf(model: Model, asks: Demand, daily: DailyMinutes, askedPerDay: number | null): Use[] {
  const stays = stayDemands(model, asks, daily, askedPerDay);
  return [
    ...stationUses(model, asks, daily),
    ...crewUses(model, asks, daily, stays),
    ...equipmentUses(model, asks, daily),
    ...carrierUses(model, daily, stays),
  ].map(({ waits, ...use }) => {
    const minutes = sum([...use.byRoute].toSorted(([a], [b]) => a - b).map(([, each]) => each));
    return { ...use, minutes, ...(waits !== undefined && { minutesAlone: minutes + waits }) };
  });
}

function stationUses(model: Model, asks: Demand, daily: DailyMinutes): UseByRoute[] {
  const { stations, steps } = model;
  return Array.from(stations.names.keys())
    .filter((station) => !stations.isBank[station])
    .map((station) => {
      const byRoute = new Map<number, number>(),
        fit = availability(model, station, daily);
      let visits = 0;
      for (const step of spotsOf(model).stepsAt[station]) {
        if (model.sideBySide.group[step] >= 0) continue;
        visits += asks.visits[step];
        const minutes = stationMinutes(model, asks, step).place + repairMinutes(model, asks, daily, step);
        add(byRoute, steps.route[step], minutes / fit);
      }
      // A station with lots has one lot at a time; the minutes are then those of the lot, by unit.
      const atOnce = stations.lotMost[station] > 0 ? 1 : stations.places[station];
      return {
        kind: 'station',
        ...named(model, 'stations', station),
        visits,
        byRoute,
        available: atOnce * daily.of(stations.calendar[station]),
        most: pulses(model, station, daily),
      };
    });
}

function pulses(model: Model, station: number, daily: DailyMinutes): number {
  const { takt, calendar } = model.pulseLines,
    line = spotsOf(model).lineOf[station];
  return line < 0 ? Infinity : daily.of(calendar[line]) / takt[line];
}

const add = (byRoute: Map<number, number>, route: number, minutes: number): void =>
  void byRoute.set(route, (byRoute.get(route) ?? 0) + minutes);

function crewUses(
  model: Model,
  asks: Demand,
  daily: DailyMinutes,
  stays: readonly StayDemand[],
): UseByRoute[] {
  const { resources } = model;
  return Array.from({ length: resources.crews }, (_, crew) => {
    const byRoute = new Map<number, number>();
    const asked = spotsOf(model).takersOf[crew].map(({ row }) => model.steps.needAmount[row]);
    let visits = askedBySteps(model, asks, daily, crew, byRoute);
    const teams = stays.filter(({ resource }) => resource === crew);
    for (const { route, amount, holds, minutes } of teams) {
      asked.push(amount);
      visits += holds;
      add(byRoute, route, amount * minutes);
    }
    return {
      kind: 'crew',
      ...named(model, 'resources', crew),
      visits,
      byRoute,
      ...(teams.length > 0 && { waits: sumOf(teams, (team) => team.amount * waitsOf(team)) }),
      available: daily.ofCrew(crew, Math.max(1, commonDivisor(asked))),
    };
  });
}

/** As crews are counted. */
function equipmentUses(model: Model, asks: Demand, daily: DailyMinutes): UseByRoute[] {
  const { resources } = model;
  return equipmentOf(resources).map((resource) => {
    const byRoute = new Map<number, number>();
    return {
      kind: 'equipment',
      ...named(model, 'resources', resource),
      visits: askedBySteps(model, asks, daily, resource, byRoute),
      byRoute,
      available: resources.amount[resource] * daily.of(resources.calendar[resource]),
    };
  });
}

/** Adds the minutes that steps ask of people or equipment; their visits. */
function askedBySteps(
  model: Model,
  asks: Demand,
  daily: DailyMinutes,
  resource: number,
  byRoute: Map<number, number>,
): number {
  const { steps } = model;
  let visits = 0;
  for (const { step, row } of spotsOf(model).takersOf[resource]) {
    visits += asks.visits[step];
    add(
      byRoute,
      steps.route[step],
      (steps.needAmount[row] * keptMinutes(model, asks, daily, { step, row })) /
        availability(model, steps.station[step], daily),
    );
  }
  return visits;
}

/** Greatest common divisor (Euclid): where all ask for pairs, one of seven people is never asked. */
function commonDivisor(numbers: readonly number[]): number {
  const of = (a: number, b: number): number => (b === 0 ? a : of(b, a % b));
  return numbers.reduce(of, 0);
}

function carrierUses(model: Model, daily: DailyMinutes, stays: readonly StayDemand[]): UseByRoute[] {
  return stays
    .filter(({ isCarrier }) => isCarrier)
    .map((stay) => ({
      kind: 'carrier',
      ...named(model, 'resources', stay.resource),
      visits: stay.holds,
      byRoute: new Map([[stay.route, stay.minutes]]),
      waits: waitsOf(stay),
      available: model.resources.amount[stay.resource] * daily.of(-1),
    }));
}

const waitsOf = ({ minutes, minutesAlone }: StayDemand): number => minutesAlone - minutes;

export function laneLimits(model: Model, asks: Demand, daily: DailyMinutes): Limit[] {
  const { lanes } = model;
  return lanes.names.map((_, lane) => {
    const visits = spotsOf(model).tripsOn[lane].reduce((total, step) => total + asks.visits[step], 0);
    const trip = carriedMinutes(model, lane) + meanDraw(model, lanes.returnDraw[lane]);
    return {
      kind: 'lane',
      ...laneNamed(model, lane),
      visits,
      minutes: (visits * trip) / fullLoad(model, lane),
      available: lanes.trucks[lane] * daily.of(lanes.driveCalendar[lane]),
      most:
        lanes.timetable[lane].length > 0 && visits > 0
          ? unitsByTimetable(model, lane, daily) / daily.workingDays / visits
          : Infinity,
    };
  });
}
