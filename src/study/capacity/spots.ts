import type { Model } from '../../flow/model/model.js';
import { once } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';

/** A step that takes of a resource: `row` is that of the need. */
export interface Taker {
  readonly step: number;
  readonly row: number;
}

/** What of a model belongs to a station, a resource or a lane: asked of each, it is found once for all. */
export interface Spots {
  /** Steps at a station, those of groups side by side among them, in order. */
  readonly stepsAt: readonly (readonly number[])[];
  /** Rows of failures of a station or, from the number of stations on, of a resource. */
  readonly failuresOf: readonly (readonly number[])[];
  /** Pulse line of a station; -1: none. */
  readonly lineOf: Int32Array;
  /** Steps that are a trip on a lane. */
  readonly tripsOn: readonly (readonly number[])[];
  /** What takes of a resource, in order of steps. */
  readonly takersOf: readonly (readonly Taker[])[];
  /** Route whose sub-assemblies are in a stock; -1 of any other resource. */
  readonly routeOf: Int32Array;
}

const lists = <Entry>(count: number): Entry[][] => Array.from({ length: count }, () => []);

export const spotsOf = once((model: Model): Spots => {
  const { steps, stations, lanes, resources, routes, failures, pulseLines } = model,
    stepsAt = lists<number>(stations.count),
    failuresOf = lists<number>(stations.count + resources.count),
    tripsOn = lists<number>(lanes.count),
    takersOf = lists<Taker>(resources.count),
    lineOf = new Int32Array(stations.count).fill(-1),
    routeOf = new Int32Array(resources.count).fill(-1);
  for (let step = 0; step < steps.count; step++) {
    if (steps.station[step] >= 0) stepsAt[steps.station[step]].push(step);
    if (steps.lane[step] >= 0) tripsOn[steps.lane[step]].push(step);
    for (const row of rowsOf(steps.needStart, step)) takersOf[steps.needResource[row]].push({ step, row });
  }
  for (let row = 0; row < failures.count; row++) {
    const station = failures.station[row];
    failuresOf[station < 0 ? stations.count + failures.resource[row] : station].push(row);
  }
  for (let line = 0; line < pulseLines.count; line++)
    for (const row of rowsOf(pulseLines.stationStart, line)) lineOf[pulseLines.station[row]] = line;
  routes.stock.forEach((resource, route) => {
    if (resource >= 0) routeOf[resource] = route;
  });
  return { stepsAt, failuresOf, lineOf, tripsOn, takersOf, routeOf };
});
