import type { Model } from '../../flow/model/model.js';
import { power } from '../../random/power.js';
import { once, remembered } from '../../scenario/values/raw.js';
import { sum, sumOf } from '../statistics/sums.js';
import type { Demand } from './demand.js';
import { chanceToMeet, meanDraw } from './means.js';
import { addValues, optionMix, stockBuild } from './mix.js';
import { spotsOf } from './spots.js';
import { inTurn } from './visits/in-turn.js';

/**
 * Expected changeover minutes of a step, per unit released; at a station with lots as if each unit were a
 * lot. Two units that follow each other on a place are independent draws from the mix of values among the
 * station's visits; see `minutesOf`. With several places, of which a unit takes one last set up for its
 * value, this is an upper bound. A unit that only goes on to its next step in its place causes none, but
 * where that has another setting.
 */
export function changeover(model: Model, asks: Demand, step: number): number {
  const { steps, stations } = model;
  const station = steps.station[step];
  if (stations.changeoverValues[station].length === 0) return 0;
  if (staysAt(model, step))
    return stations.changeoverOption[station] >= 0 ? 0 : asks.visits[step] * inPlace(model, step);
  const minutes = remembered(changeovers(asks), station, () => perVisit(model, asks, station));
  return minutes === null ? 0 : asks.visits[step] * minutes;
}

/** By station. */
const changeovers = once<Demand, Map<number, number | null>>(() => new Map());

/** Units come to it from the step before in the same place. */
const staysAt = ({ steps, stations }: Model, step: number): boolean =>
  step > 0 &&
  stations.lotMost[steps.station[step]] === 0 &&
  steps.route[step - 1] === steps.route[step] &&
  steps.station[step - 1] === steps.station[step];

/** Mean minutes of a unit that goes on to a step with a setting of its own in its place. */
function inPlace(model: Model, step: number): number {
  const station = model.steps.station[step],
    values = model.stations.changeoverValues[station].length,
    isStock = model.routes.stock[model.steps.route[step]] >= 0;
  let minutes = 0,
    units = 0;
  for (const build of isStock ? [stockBuild(model)] : optionMix(model).builds) {
    const before = new Float64Array(values),
      after = new Float64Array(values),
      weight = build.weight * chanceToMeet(model, build, step);
    addValues(model, build, step - 1, 1, before);
    addValues(model, build, step, 1, after);
    minutes += weight * pairMinutes(model, station, (i, j) => before[i] * after[j]);
    units += weight;
  }
  return units > 0 ? minutes / units : 0;
}

/** Sum over all pairs of values of their chance times the mean minutes of the changeover. */
function pairMinutes(
  model: Model,
  station: number,
  chance: (before: number, after: number) => number,
): number {
  const { changeoverValues, changeoverStart, changeoverDraw } = model.stations,
    count = changeoverValues[station].length;
  let minutes = 0;
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++)
      minutes += chance(i, j) * meanDraw(model, changeoverDraw[changeoverStart[station] + i * count + j]);
  return minutes;
}

/** Of a visit at which there may be one; null: nobody comes. */
function perVisit(model: Model, asks: Demand, station: number): number | null {
  const { stations, sideBySide } = model,
    here = spotsOf(model).stepsAt[station].filter((s) => sideBySide.group[s] < 0),
    isOption = stations.changeoverOption[station] >= 0;
  const comes = new Float64Array(stations.changeoverValues[station].length),
    leaves = comes.slice();
  for (const s of here) {
    const next = here.includes(s + 1) && staysAt(model, s + 1) ? asks.visits[s + 1] : 0,
      left = isOption ? 1 : Math.max(0, 1 - next / asks.visits[s]);
    asks.byValue[s].forEach((visits, value) => {
      if (isOption || !staysAt(model, s)) comes[value] += visits;
      if (visits > 0) leaves[value] += visits * left;
    });
  }
  const total = sum(comes),
    left = sum(leaves);
  if (total <= 0) return null;
  const shares = comes.map((visits) => visits / total),
    before = leaves.map((visits) => visits / left);
  const most = isOption || here.every((s) => !staysAt(model, s)) ? stations.batchMost[station] : 0,
    lot = isOption ? 1 : Math.min(stations.lotMost[station], stations.places[station]);
  if (most > 0) return inBatches(model, station, shares, most, Math.max(1, lot));
  return lot > 1
    ? betweenLots(model, asks, station, lot)
    : pairMinutes(model, station, (i, j) => before[i] * shares[j]);
}

/**
 * Expected changeover minutes of a unit (a lot of so many) with batches of at most k: the mean time of the
 * changeovers of independent draws, as often as there are runs. Changeovers a unit, at least, where p is the
 * share of the commonest value and many units wait (own arithmetic): batches of k of it come 1 to k / p
 * units; after each there is a changeover and one back, unless none of the other units that came meanwhile
 * waits, a chance of p^k at most (of lots of n, p^(k n)). And no value has longer batches than k while the
 * commonest waits: 1 / k in all where p is below a half, else twice the batches of the others.
 */
function inBatches(model: Model, station: number, shares: Float64Array, k: number, lot: number): number {
  const p = Math.max(...shares),
    minutes = pairMinutes(model, station, (i, j) => shares[i] * shares[j]),
    differ = shares.reduce((chance, share, i) => {
      shares.forEach((other, j) => {
        if (i !== j) chance += share * other;
      });
      return chance;
    }, 0);
  return differ === 0
    ? minutes
    : (minutes / differ) * (Math.max(2 * p * (1 - power(p, k * lot)), Math.min(1, 2 * (1 - p))) / k);
}

/**
 * Expected changeover minutes of a lot, of one kind (alike steps, one setting) each, where many units wait
 * and the first in order decides on the kind.
 */
function betweenLots(model: Model, asks: Demand, station: number, lot: number): number {
  const kinds = kindsAt(model, asks, station),
    next = inTurn(
      kinds.map(({ share }) => share),
      lot,
    );
  return kindMinutes(model, station, kinds, (i, j) => next[i * kinds.length + j]);
}

/** Minutes of a lot of one kind after another; kinds of one setting need no changeover. */
function kindMinutes(
  model: Model,
  station: number,
  kinds: readonly Kind[],
  chance: (before: number, after: number) => number,
): number {
  const count = model.stations.changeoverValues[station].length,
    byValues = new Float64Array(count * count);
  kinds.forEach((before, i) => {
    kinds.forEach((after, j) => {
      byValues[before.value * count + after.value] += chance(i, j);
    });
  });
  return pairMinutes(model, station, (i, j) => byValues[i * count + j]);
}

interface Kind {
  readonly value: number;
  readonly share: number;
}

/** What lots at a station are of, and the shares of their units. */
function kindsAt({ steps }: Model, { byValue }: Demand, station: number): Kind[] {
  const units = new Map<string, { value: number; visits: number }>();
  byValue.forEach((visitsOf, s) => {
    if (steps.station[s] !== station) return;
    visitsOf.forEach((visits, value) => {
      const key = `${steps.lotKind[s]} ${value}`;
      if (visits > 0) units.set(key, { value, visits: visits + (units.get(key)?.visits ?? 0) });
    });
  });
  const all = [...units.values()],
    total = sumOf(all, ({ visits }) => visits);
  return all.map(({ value, visits }) => ({ value, share: visits / total }));
}
