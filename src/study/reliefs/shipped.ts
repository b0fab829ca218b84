import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { meanDraw } from '../capacity/means.js';
import type { RateJudged } from '../held/rate-held.js';
import { type Counted, countingOf, type ShippedBy } from '../loads/counting.js';
import { type Arithmetic, arithmeticOf, loadsOf, mayGoInLoads } from '../loads/loads.js';
import { stretchOf, type Window } from '../programme/judged-window.js';
import { shippedPerDay } from '../programme/series.js';
import { type Planned, planned } from '../sample/planned.js';
import type { Changed } from './changes.js';

/** The weeks over which the base is counted, null: the whole run; its rate, and how it is counted. */
interface CountedBy extends Pick<RateJudged, 'heldIn' | 'askedPerDay'> {
  readonly window: (Counted & Pick<Window, 'first' | 'last'>) | null;
}

/** What is counted of a replication. */
export type Shipments = ShippedBy & Pick<Observation, 'shipped' | 'endedAt' | 'minutes'>;

/**
 * Units shipped a working day by a changed scenario in a replication, over the time and the days of the base.
 * Where a change leaves the loads as they are, they are counted as in the base, so that a change that does
 * nothing gains exactly nothing; else over whole loads of its own.
 */
export function shippedADay(
  plan: Planned,
  { window, heldIn, askedPerDay }: CountedBy,
): (changed: Changed) => (seen: Shipments) => number {
  if (window === null) {
    const wholeRun = shippedPerDay(plan.calendar);
    return () => wholeRun;
  }
  let ofBase: Arithmetic | undefined;
  return ({ scenario, model }) => {
    if (!mayGoInLoads(model) || hasSameLoads(plan.model, model)) return heldIn;
    const own = planned(scenario, model),
      // What the steps of the base ask for will do, as long as the steps are the same.
      arithmetic =
        model.steps.count === plan.model.steps.count ? (ofBase ??= arithmeticOf(plan)) : arithmeticOf(own),
      loads = loadsOf(own, askedPerDay ?? 0, stretchOf(plan, window), arithmetic),
      { shipped } = countingOf(plan, window, loads, arithmetic);
    return (seen) => shipped(seen) / window.workingDays;
  };
}

/** Trucks, lots and supplies that make the same loads. */
export function hasSameLoads(one: Model, other: Model): boolean {
  const of = (model: Model): number[] => {
    const { lanes, stations, supplies } = model;
    return [
      ...[lanes.capacity, lanes.rule, lanes.wait, lanes.trucks].flatMap((column) => [...column]),
      ...lanes.timetable.map((times) => times.length),
      ...[stations.lotMost, stations.lotLeast, stations.lotWait].flatMap((column) => [...column]),
      ...[supplies.level, supplies.lot].flatMap((column) => [...column]),
      ...Array.from(supplies.leadDraw, (draw) => meanDraw(model, draw)),
      ...[...supplies.planTimes, ...supplies.planLots].flatMap((column) => [...column]),
    ];
  };
  const first = of(one),
    second = of(other);
  return first.length === second.length && first.every((value, i) => value === second[i]);
}
