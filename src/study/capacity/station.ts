import type { Model } from '../../flow/model/model.js';
import { CREW } from '../../flow/model/resources.js';
import { power } from '../../random/power.js';
import { once, remembered } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';
import { sum } from '../statistics/sums.js';
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
 * A crew is held from the changeover to the end of the last work and for repairs, not for the last settling
 * or the process. Steps side by side need their place together: that is counted at their group. A lot is
 * worked on once for all of it: its minutes are shared by the most units it can have.
 */
export function stationMinutes(model: Model, asks: Demand, step: number): StepMinutes {
  const station = model.steps.station[step];
  if (station < 0) return { place: 0, crew: 0, attended: 0, unattended: 0 };
  if (model.sideBySide.group[step] >= 0)
    return { place: 0, crew: asks.attended[step], attended: 0, unattended: 0 };
  if (model.sideBySide.group[step + 1] === step) {
    const { place, attended } = groupMinutes(model, asks, step),
      change = changeover(model, asks, step);
    return {
      place: place + change,
      crew: attended + change,
      attended: attended + change,
      unattended: place - attended,
    };
  }
  const lot = Math.min(model.stations.lotMost[station], model.stations.places[station]);
  const share = lot > 0 ? 1 / lot : 1;
  const attended = asks.attended[step] + changeover(model, asks, step),
    unattended = asks.unattended[step];
  return { place: (attended + unattended) * share, crew: attended * share, attended, unattended };
}

/**
 * Expected changeover minutes of a step: two units that follow each other on a place are independent draws
 * from the mix of values among the station's visits; see `changeoverMinutes`. With several places, of which a
 * unit takes one last set up for its value, this is an upper bound. A unit that only goes on to its next step
 * in its place causes none.
 */
export function changeover(model: Model, asks: Demand, step: number): number {
  const { steps, stations } = model;
  const station = steps.station[step];
  if (stations.changeoverOption[station] < 0) return 0;
  const stays =
    step > 0 &&
    stations.lotMost[station] === 0 &&
    steps.route[step - 1] === steps.route[step] &&
    steps.station[step - 1] === station;
  if (stays) return 0;
  const minutes = remembered(changeovers(asks), station, () => perVisit(model, asks, station));
  return minutes === null ? 0 : asks.visits[step] * minutes;
}

/** By station. */
const changeovers = once<Demand, Map<number, number | null>>(() => new Map());

/** Of a visit at which there may be one; null: nobody comes. */
function perVisit(model: Model, asks: Demand, station: number): number | null {
  const byValue = new Float64Array(model.options[model.stations.changeoverOption[station]].values.length);
  for (const s of spotsOf(model).stepsAt[station])
    if (model.sideBySide.group[s] < 0)
      asks.byValue[s].forEach((visits, value) => {
        byValue[value] += visits;
      });
  const total = sum(byValue);
  return total > 0
    ? changeoverMinutes(
        model,
        station,
        byValue.map((visits) => visits / total),
      )
    : null;
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
 * Expected changeover minutes of a unit that takes a place, from the shares p of the values: the sum of p_i
 * p_j t_ij over pairs that differ, in order of arrival; with batches the mean time of these changeovers, as
 * often as `inBatches` says.
 */
function changeoverMinutes(model: Model, station: number, shares: Float64Array): number {
  const { stations } = model;
  let minutes = 0,
    differ = 0;
  for (let i = 0; i < shares.length; i++) {
    for (let j = 0; j < shares.length; j++) {
      const draw = stations.changeoverDraw[stations.changeoverStart[station] + i * shares.length + j],
        chance = shares[i] * shares[j];
      minutes += chance * meanDraw(model, draw);
      if (i !== j) differ += chance;
    }
  }
  const most = stations.batchMost[station];
  return most === 0 || differ === 0 ? minutes : (minutes / differ) * inBatches(most, Math.max(...shares));
}

/**
 * Changeovers a unit, at least, with batches of at most k, where p is the share of the commonest value and
 * many units wait (own arithmetic). Batches of k of it come 1 to k / p units; after each there is a
 * changeover and one back, unless none of the other units that came meanwhile waits, a chance of p^k at most.
 * And no value has longer batches than k while the commonest waits: 1 / k in all where p is below a half,
 * else twice the batches of the others.
 */
function inBatches(k: number, p: number): number {
  return Math.max(2 * p * (1 - power(p, k)), Math.min(1, 2 * (1 - p))) / k;
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
