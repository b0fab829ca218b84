import type { Model } from '../../flow/model/model.js';
import { CARRIER } from '../../flow/model/resources.js';
import { REWORK_ONLY } from '../../flow/model/steps.js';
import { sumOf } from '../statistics/sums.js';
import type { Demand } from './demand.js';
import { chanceToMeet, meanDraw } from './means.js';
import { type Build, optionMix, stockBuild } from './mix.js';
import { stationMinutes } from './station.js';

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
}

/** By carriers and teams. */
export function stayDemands(model: Model, asks: Demand): StayDemand[] {
  const { companions, steps, resources } = model;
  return companions.names.map((_, id) => {
    const resource = companions.resource[id],
      isCarrier = resources.kind[resource] === CARRIER,
      holds = holdsOf(model, asks, id);
    let minutes = holds * meanDraw(model, companions.returnDraw[id]);
    for (let step = companions.from[id]; step <= companions.to[id]; step++) {
      const lane = steps.lane[step],
        { place, crew } = stationMinutes(model, asks, step);
      minutes += isCarrier ? place : crew;
      if (lane >= 0) minutes += asks.visits[step] * carriedMinutes(model, lane);
    }
    return {
      isCarrier,
      resource,
      route: steps.route[companions.from[id]],
      amount: companions.amount[id],
      holds,
      minutes,
    };
  });
}

/** For which a unit is on a lane, from loading to unloading, mean. */
export const carriedMinutes = (model: Model, lane: number): number =>
  sumOf([model.lanes.loadDraw, model.lanes.driveDraw, model.lanes.unloadDraw], (draws) =>
    meanDraw(model, draws[lane]),
  );

/**
 * One for each unit that does a step of the stretch; those who come back to it after they have left it are
 * not counted again.
 */
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
