import type { Model } from '../../flow/model/model.js';
import { EQUIPMENT } from '../../flow/model/resources.js';
import { FIRST, WHOLE } from '../../flow/model/steps.js';
import { rowsOf } from '../lists.js';
import { sumOf } from '../statistics/sums.js';
import { changeover } from './changeovers.js';
import type { DailyMinutes } from './days.js';
import type { Demand } from './demand.js';
import { meanDraw } from './means.js';
import type { Taker } from './spots.js';
import { availability, stationMinutes } from './station.js';

/**
 * Minutes that a step keeps each of the people or pieces that it claims, per unit released, repairs of shared
 * equipment that fails meanwhile included.
 */
export function keptMinutes(model: Model, asks: Demand, daily: DailyMinutes, taker: Taker): number {
  const { needPart, needResource } = model.steps,
    own = takenMinutes(model, asks, taker);
  return needPart[taker.row] === WHOLE
    ? own + repairMinutes(model, asks, daily, taker.step)
    : own / fitness(model, daily, needResource[taker.row]);
}

/** Those for which repairs of shared equipment hold a step up, per unit released. */
export const repairMinutes = (model: Model, asks: Demand, daily: DailyMinutes, step: number): number => {
  const { steps, resources } = model;
  return sumOf(
    rowsOf(steps.needStart, step).filter((row) => resources.kind[steps.needResource[row]] === EQUIPMENT),
    (row) =>
      steps.needAmount[row] *
      takenMinutes(model, asks, { step, row }) *
      (1 / fitness(model, daily, steps.needResource[row]) - 1),
  );
};

/**
 * The same without repairs. For the first or last part of the work it is the mean of this part, or of the
 * work where that is less: a little more than the mean of the shorter of both.
 */
function takenMinutes(model: Model, asks: Demand, { step, row }: Taker): number {
  const { needPart, needDraw } = model.steps;
  if (needPart[row] === WHOLE) return stationMinutes(model, asks, step).crew;
  const part = Math.min(asks.attended[step], asks.visits[step] * meanDraw(model, needDraw[row]));
  const isFirst =
    needPart[row] === FIRST && model.stations.changeoverAlone[model.steps.station[step] ?? 0] === 0;
  return isFirst ? part + changeover(model, asks, step) : part;
}

const fitness = (model: Model, daily: DailyMinutes, resource: number): number =>
  availability(model, model.stations.count + resource, daily);
