import type { Model } from '../../flow/model/model.js';
import { CARRIER } from '../../flow/model/resources.js';
import { REWORK_ONLY } from '../../flow/model/steps.js';
import { sumOf } from '../statistics/sums.js';
import type { DailyMinutes } from './days.js';
import type { Demand } from './demand.js';
import { chanceToMeet, meanDraw } from './means.js';
import { type Build, optionMix, stockBuild } from './mix.js';
import { stationMinutes } from './station.js';
import { meanTimeAlone } from './way/alone.js';
import { wayOf } from './way/way.js';
import { tripsBackFrom } from './way/ways-back.js';

/** What a carrier or a team is asked for, per unit released. */
export interface StayDemand {
  readonly isCarrier: boolean;
  readonly resource: number;
  readonly route: number;
  /** Of the resource, for one hold: 1 carrier, the people of a team. */
  readonly amount: number;
  /** Times that it is claimed. */
  readonly holds: number;
  /**
   * Minutes for which it is kept, of the clock for a carrier, of work for a team's people: a lower bound.
   * Step times, trips and the way back are in it, waiting, nights and blocking are not, nor is what runs
   * unattended while a team stands by.
   */
  readonly minutes: number;
  /**
   * The same with the waits of a unit alone: nights and days off, departures of a timetable, and at the rate
   * asked others who fill a load or a lot with it and then stand in line. Of a team those in its crew's
   * hours. Other queues and blocking are not in it. It is a mean over units that begin evenly, not a bound.
   */
  readonly minutesAlone: number;
}

/** By carriers and teams; `askedPerDay` units a working day are released, null: no rate is asked. */
export function stayDemands(
  model: Model,
  asks: Demand,
  daily: DailyMinutes,
  askedPerDay: number | null,
): StayDemand[] {
  const { companions, steps, resources } = model;
  return companions.names.map((_, id) => {
    const resource = companions.resource[id],
      isCarrier = resources.kind[resource] === CARRIER,
      holds = holdsOf(model, asks, id) + asks.claimedAgain[id],
      isWith = shareWith(asks, id),
      back = meanDraw(model, companions.returnDraw[id]);
    let minutes = holds * back;
    for (let step = companions.from[id]; step <= companions.to[id]; step++) {
      // Steps side by side are in the minutes of their group.
      if (model.sideBySide.group[step] >= 0) continue;
      const lane = steps.lane[step],
        { attended, unattended } = stationMinutes(model, asks, step);
      minutes += isWith(step) * (isCarrier ? attended + unattended : attended);
      if (lane >= 0) minutes += isWith(step) * asks.visits[step] * carriedMinutes(model, lane);
      // A team stays behind.
      if (isCarrier)
        for (const trip of tripsBackFrom(model, step))
          minutes += isWith(step) * asks.visits[trip] * carriedMinutes(model, steps.lane[trip]);
    }
    const legs = wayOf(model, asks, daily, { id, isWith, askedPerDay }).map((leg) =>
      'minutes' in leg ? { ...leg, minutes: leg.minutes / holds } : { ...leg, share: leg.share / holds },
    );
    const way = { calendar: daily.calendar(companions.returnCalendar[id]), minutes: back },
      first = legs.at(0),
      begins = first !== undefined && 'minutes' in first ? first.calendar : null,
      of = isCarrier ? null : daily.calendar(resources.calendar[resource]);
    const alone = holds > 0 ? holds * meanTimeAlone([...legs, way], begins, daily.spanMinutes, of) : 0;
    return {
      isCarrier,
      resource,
      route: steps.route[companions.from[id]],
      amount: companions.amount[id],
      holds,
      minutes,
      // Without an end of the way in the span there is no more to say than the bound.
      minutesAlone: Math.max(minutes, Number.isNaN(alone) ? 0 : alone),
    };
  });
}

/** Share of a step's visits with it: the others gave it back before they were sent back. */
function shareWith({ visits, without }: Demand, id: number): (step: number) => number {
  const others = without.get(id);
  return (step) => (others === undefined || others[step] === 0 ? 1 : 1 - others[step] / visits[step]);
}

/** For which a unit is on a lane, from loading to unloading, mean. */
export const carriedMinutes = (model: Model, lane: number): number =>
  sumOf([model.lanes.loadDraw, model.lanes.driveDraw, model.lanes.unloadDraw], (draws) =>
    meanDraw(model, draws[lane]),
  );

/** One for each unit that does a step of the stretch, however often. */
function holdsOf(model: Model, asks: Demand, id: number): number {
  const { companions, steps, routes } = model,
    route = steps.route[companions.from[id]],
    stretch = Array.from(steps.station.keys()).slice(companions.from[id], companions.to[id] + 1);
  const builds = routes.stock[route] >= 0 ? [stockBuild(model)] : optionMix(model).builds;
  const chance = (build: Build, step: number): number =>
    steps.rework[step] === REWORK_ONLY
      ? 0
      : chanceToMeet(model, build, step) / Math.max(1, steps.sampleN[step]);
  const share = sumOf(
    builds,
    (build) => build.weight * Math.max(...stretch.map((step) => chance(build, step))),
  );
  return Math.min(share * asks.started[route], Math.max(...stretch.map((step) => asks.visits[step])));
}
