import type { Model } from '../../flow/model/model.js';
import { FIRST, WHOLE } from '../../flow/model/steps.js';
import { changeover } from './changeovers.js';
import type { Demand } from './demand.js';
import { meanDraw } from './means.js';
import type { Taker } from './spots.js';
import { stationMinutes } from './station.js';

/**
 * Minutes that a step keeps a piece of shared equipment, per unit released. For the first or last part of the
 * work it is the mean of this part, or of the work where that is less: a little more than the mean of the
 * shorter of both.
 */
export function equipmentMinutes(model: Model, asks: Demand, { step, row }: Taker): number {
  const { needPart, needDraw } = model.steps;
  if (needPart[row] === WHOLE) return stationMinutes(model, asks, step).crew;
  const part = Math.min(asks.attended[step], asks.visits[step] * meanDraw(model, needDraw[row]));
  const isFirst =
    needPart[row] === FIRST && model.stations.changeoverAlone[model.steps.station[step] ?? 0] === 0;
  return isFirst ? part + changeover(model, asks, step) : part;
}
