import type { Model } from '../flow/model.js';
import { groupMinutes } from './capacity-beside.js';
import { changeoverMinutes } from './capacity-changeover.js';
import type { Demand } from './capacity-demand.js';

/** Minutes that a step asks for, per unit released: of a place, and of each person of its crew. */
export interface StepMinutes {
  readonly place: number;
  readonly crew: number;
}

/**
 * A crew is held from the changeover to the end of the last work and for repairs, not for the last settling or the
 * process. Steps side by side need their place together: that is counted at their group. A lot is worked on once for all
 * of it: its minutes are shared by the most units it can have.
 */
export function stationMinutes(model: Model, asks: Demand, step: number): StepMinutes {
  const station = model.steps.station[step];
  if (station < 0) return { place: 0, crew: 0 };
  if (model.beside.group[step] >= 0) return { place: 0, crew: asks.attended[step] };
  if (model.beside.group[step + 1] === step) {
    const { place, attended } = groupMinutes(model, asks, step),
      change = changeover(model, asks, step);
    return { place: place + change, crew: attended + change };
  }
  const lot = Math.min(model.stations.lotMost[station], model.stations.places[station]);
  const share = lot > 0 ? 1 / lot : 1;
  const crew = (asks.attended[step] + changeover(model, asks, step)) * share;
  return { place: crew + asks.unattended[step] * share, crew };
}

/**
 * Expected changeover minutes of a step: two units that follow each other on a place are independent draws from the mix of
 * values among the station's visits; see `changeoverMinutes`. With several places, of which a unit takes one
 * last set up for its value, this is an upper bound. A unit that only goes on to its next step in its place causes none.
 */
function changeover(model: Model, asks: Demand, step: number): number {
  const { steps, stations } = model;
  const station = steps.station[step];
  if (stations.changeoverOption[station] < 0) return 0;
  const stays =
    step > 0 &&
    stations.lotMost[station] === 0 &&
    steps.route[step - 1] === steps.route[step] &&
    steps.station[step - 1] === station;
  if (stays) return 0;
  const byValue = new Float64Array(model.options[stations.changeoverOption[station]].values.length);
  for (let s = 0; s < steps.count; s++)
    if (steps.station[s] === station && model.beside.group[s] < 0)
      asks.byValue[s].forEach((visits, value) => {
        byValue[value] += visits;
      });
  const total = byValue.reduce((sum, visits) => sum + visits, 0);
  return total > 0
    ? asks.visits[step] *
        changeoverMinutes(
          model,
          station,
          byValue.map((visits) => visits / total),
        )
    : 0;
}
