import type { Model } from '../../flow/model/model.js';
import { REWORK_ONLY } from '../../flow/model/steps.js';
import { remembered } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';
import { sumOf } from '../statistics/sums.js';
import { chanceToMeet, meanDraw, meanFactor, meanLearning, meanRepair } from './means.js';
import { addValues, type Build, optionMix, routeOptions, stockBuild } from './mix.js';

import { spotsOf } from './spots.js';
import { added, type Look } from './visits/looks.js';
import { expectedVisits, type Visits } from './visits/visits.js';
import { waysBackFrom } from './way/ways-back.js';

/** What the steps of all routes ask for, per unit released. Arrays run over the steps of the model. */
export interface Demand {
  readonly visits: Float64Array;
  /**
   * Minutes with people: work with its factors, settling between passes, repairs. Of a lot, a unit's part of
   * it is not taken here.
   */
  readonly attended: Float64Array;
  /** Minutes on the place without people: the last settling and the process. */
  readonly unattended: Float64Array;
  /** Sub-assemblies begun, by route; 1 for the unit's own route. */
  readonly started: Float64Array;
  /** Sub-assemblies and parts taken from stocks, by resource. */
  readonly taken: Float64Array;
  /** What is found at the steps that look for something, by step. */
  readonly looks: ReadonlyMap<number, Look>;
  /** Visits by step and value of the station's changeover option, or setting; empty where there is none. */
  readonly byValue: readonly Float64Array[];
  /** By carrier or team, for each unit released: times that one claims it who has given it back. */
  readonly claimedAgain: Float64Array;
  /** Visits without one of those who have given it back, by carrier or team and step. */
  readonly without: ReadonlyMap<number, Float64Array>;
  /** Whether every combination of options was reckoned by itself. */
  readonly isExact: boolean;
}

/** Visits of a step for each unit released but those of units sent back: the others are done again. */
export function firstVisits(model: Model, { started }: Pick<Demand, 'started'>, step: number): number {
  const { steps, routes } = model,
    route = steps.route[step],
    builds = routes.stock[route] >= 0 ? [stockBuild(model)] : optionMix(model).builds;
  if (steps.rework[step] === REWORK_ONLY) return 0;
  return (
    (started[route] / Math.max(1, steps.sampleN[step])) *
    sumOf(builds, (build) => build.weight * chanceToMeet(model, build, step))
  );
}
/** What the steps of a model ask for; known from the second time on, since it takes a part of a second. */
export function demand(model: Model): Demand {
  const asks = known.get(model) ?? reckon(model);
  known.set(model, asks);
  return asks;
}
const known = new WeakMap<Model, Demand>();

/** Routes of stocks, each before those that it needs. */
function inOrderOfNeed(model: Model): number[] {
  const { steps, routes } = model,
    { routeOf } = spotsOf(model);
  const order: number[] = [],
    seen = new Set<number>(),
    open = new Set<number>();
  const visit = (route: number): void => {
    if (open.has(route))
      throw new RangeError(
        `feeders: expected none that needs itself, got '${routes.names[route]}'; take it off its own route`,
      );
    if (seen.has(route)) return;
    seen.add(route);
    open.add(route);
    for (const n of rowsOf(steps.needStart, routes.firstStep[route], routes.firstStep[route + 1])) {
      const feeder = routeOf[steps.needResource[n]];
      if (feeder >= 0) visit(feeder);
    }
    open.delete(route);
    order.push(route);
  };
  for (const [route, resource] of routes.stock.entries()) if (resource >= 0) visit(route);
  return order.toReversed();
}

/**
 * Walks every build through its route and, from there, through the feeders it draws on. A scrapped
 * sub-assembly is made again, so a feeder begins 1 / yield for each that is needed. A visit in rework takes
 * parts off or asks for parts again.
 */
function reckon(model: Model): Demand {
  const { steps, stations, routes, resources } = model,
    stocksInOrder = inOrderOfNeed(model);
  const visits = new Float64Array(steps.count),
    attended = new Float64Array(steps.count),
    unattended = new Float64Array(steps.count);
  const started = new Float64Array(routes.count),
    taken = new Float64Array(resources.count);
  const byValue = Array.from({ length: steps.count }, (_, s) => {
    const values =
      steps.station[s] < 0 || model.sideBySide.group[s] >= 0
        ? 0
        : stations.changeoverValues[steps.station[s]].length;
    return new Float64Array(values);
  });
  const looks = new Map<number, Look>();
  const claimedAgain = new Float64Array(model.companions.count),
    without = new Map<number, Float64Array>();
  const mean = (draw: number): number => meanDraw(model, draw);
  const learned = Array.from({ length: steps.count }, (_, step) => meanLearning(model, step));
  const paths = new Map<string, Visits>();
  const deciding = Array.from(routes.names, (_, route) => routeOptions(model, route));
  /** Builds that go the same way share what is reckoned for it. */
  function pathOf(route: number, build: Build): Visits {
    const key = `${route}: ${deciding[route].map((option) => build.values[option].join(' ')).join(', ')}`;
    let visits = paths.get(key);
    if (visits === undefined)
      paths.set(key, (visits = expectedVisits(model, route, build, (inner, of) => pathOf(inner, of).left)));
    return visits;
  }
  const ofStock = stockBuild(model);
  const { routeOf } = spotsOf(model);
  /** Of a stock, by its route: what those before it in the order of need ask for. */
  const needed = new Float64Array(routes.count);

  function walk(route: number, units: number, build: Build): void {
    if (units <= 0) return;
    started[route] += units;
    const path = pathOf(route, build);
    const first = routes.firstStep[route];
    for (const stay of path.stays) {
      claimedAgain[stay.id] += units * stay.claimedAgain;
      const visitsOf = remembered(without, stay.id, () => new Float64Array(steps.count));
      stay.without.forEach((each, i) => {
        visitsOf[first + i] += units * each;
      });
    }
    path.visits.forEach((each, i) => {
      const step = first + i,
        times = units * each;
      if (times <= 0) return;
      visits[step] += times;
      const look = path.looks[i];
      if (look !== undefined) looks.set(step, added(looks.get(step), look, units));
      for (const [target, way] of waysBackFrom(model, step))
        for (const at of way) visits[at] += units * (look?.sentTo.get(target) ?? 0);
      if (steps.station[step] < 0) return;
      const passes = steps.passes[step],
        settle = mean(steps.settleDraw[step]);
      const isLot = stations.lotMost[steps.station[step]] > 0;
      attended[step] +=
        times *
        (passes * mean(steps.workDraw[step]) * meanFactor(model, build, step) * learned[step] +
          (passes - 1) * settle);
      // A lot has no repairs of its own.
      if (!isLot)
        for (const [then, found] of path.repairs[i])
          attended[step] += units * found * meanRepair(model, build, model.thens.repairTime[then]);
      attended[step] += units * path.extra[i];
      unattended[step] += times * (settle + mean(steps.processDraw[step]));
      if (byValue[step].length > 0) addValues(model, build, step, times, byValue[step]);
      for (const n of rowsOf(steps.needStart, step)) {
        const resource = steps.needResource[n],
          feeder = routeOf[resource];
        if (resource >= resources.crews) taken[resource] += times * steps.needAmount[n];
        if (feeder >= 0) needed[feeder] += times * steps.needAmount[n];
      }
      for (const o of rowsOf(steps.offStart, step)) feed(steps.offRoute[o], units * path.passed[i], build);
    });
  }

  function feed(route: number, wanted: number, build: Build): void {
    walk(route, wanted / pathOf(route, build).yield, build);
  }

  const { builds, isExact } = optionMix(model);
  // Of orders built again until one is shipped, 1 / yield units are begun.
  for (const build of builds)
    walk(0, build.weight / (model.programme.orders.replaceScrapped ? pathOf(0, build).yield : 1), build);
  for (const route of stocksInOrder) if (needed[route] > 0) feed(route, needed[route], ofStock);
  return {
    visits,
    attended,
    unattended,
    started,
    taken,
    looks,
    byValue,
    claimedAgain,
    without,
    isExact,
  };
}
