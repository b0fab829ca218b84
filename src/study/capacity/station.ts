import type { Model } from '../../flow/model/model.js';
import { CREW } from '../../flow/model/resources.js';
import { rowsOf } from '../lists.js';
import { changeover } from './changeovers.js';
import type { DailyMinutes } from './days.js';
import type { Demand } from './demand.js';
import { meanDraw } from './means.js';
import { spotsOf } from './spots.js';

/**
 * Minutes that a step asks for, per unit released: of a place, and of each person of its crew; and those for
 * which the unit itself is there, with people and without. They differ where units share a lot.
 */
export interface StepMinutes {
  readonly place: number;
  readonly crew: number;
  readonly attended: number;
  readonly unattended: number;
}

/**
 * A crew is held from a changeover by people to the end of the last work and for repairs, not for the last
 * settling or the process. Steps side by side need their place together: that is counted at their group. A
 * lot is worked on once for all of it: its minutes are shared by the most units it can have.
 */
export function stationMinutes(model: Model, asks: Demand, step: number): StepMinutes {
  const station = model.steps.station[step];
  if (station < 0) return { place: 0, crew: 0, attended: 0, unattended: 0 };
  if (model.sideBySide.group[step] >= 0)
    return { place: 0, crew: asks.attended[step], attended: 0, unattended: 0 };
  const change = changeover(model, asks, step),
    alone = model.stations.changeoverAlone[station] === 1 ? change : 0,
    byPeople = change - alone;
  if (model.sideBySide.group[step + 1] === step) {
    const { place, attended } = groupMinutes(model, asks, step);
    return {
      place: place + change,
      crew: attended + byPeople,
      attended: attended + byPeople,
      unattended: place - attended + alone,
    };
  }
  const lot = Math.min(model.stations.lotMost[station], model.stations.places[station]);
  const share = lot > 0 ? 1 / lot : 1;
  const attended = asks.attended[step] + byPeople,
    unattended = asks.unattended[step] + alone;
  return { place: (attended + unattended) * share, crew: attended * share, attended, unattended };
}

/**
 * Minutes that steps side by side keep their place, per unit released, and those with people: a lower bound.
 * It is the mean of the longest of them (the mean of the longest time is more, by chance), or what the people
 * who may be there at once need.
 */
function groupMinutes(
  { steps, sideBySide, resources }: Model,
  asks: Demand,
  group: number,
): { readonly place: number; readonly attended: number } {
  let place = 0,
    attended = 0,
    peopleMinutes = 0;
  for (let step = group + 1; step < steps.count && sideBySide.group[step] === group; step++) {
    const minutes = asks.attended[step] + asks.unattended[step];
    place = Math.max(place, minutes);
    attended = Math.max(attended, asks.attended[step]);
    for (const n of rowsOf(steps.needStart, step))
      if (resources.kind[steps.needResource[n]] === CREW) peopleMinutes += steps.needAmount[n] * minutes;
  }
  return { place: Math.max(place, peopleMinutes / sideBySide.people[steps.station[group]]), attended };
}

/**
 * Share of its time for which a station, or shared equipment, is fit for its task, in the long run. By
 * operating time 1 / (1 + sum of mean repair / mean time between), by the clock mean time between / (mean
 * time between + mean repair) for each way to fail (Hopp & Spearman, Factory Physics, ch. 8: effective time
 * te = t0 / A; quoted from memory). Repairs that keep hours last longer by the clock; repairs of what fails
 * in use are taken to cost their full time on shift. Outages are left out.
 * @param owner a station, or the number of stations and that of the resource
 */
export function availability(model: Model, owner: number, daily: DailyMinutes): number {
  const { failures } = model;
  let inUse = 1,
    byClock = 1;
  for (const row of spotsOf(model).failuresOf[owner]) {
    const every = meanDraw(model, failures.everyDraw[row]),
      repair = meanDraw(model, failures.repairDraw[row]);
    if (failures.byClock[row] === 1)
      byClock *= every / (every + (repair * daily.of(-1)) / daily.of(failures.repairCalendar[row]));
    else inUse += repair / every;
  }
  return byClock / inUse;
}
