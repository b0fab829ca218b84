import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { remembered } from '../values/raw.js';
import { allSteps, findsOf, type StationedStep, stepsByName } from './placed.js';

/** A send-back from a station to another. */
interface Jump {
  readonly path: Path;
  readonly at: string;
  readonly target: string;
}
interface Numbered<Thing> {
  readonly thing: Thing;
  readonly number: number;
}
/** By station: its steps, and the send-backs that leave it or lead to it. */
export interface Floor {
  readonly stepsAt: ReadonlyMap<string, readonly Numbered<StationedStep>[]>;
  readonly jumpsAt: ReadonlyMap<string, readonly Numbered<Jump>[]>;
}

export function floorOf(scenario: Scenario): Floor {
  const stepsAt = new Map<string, Numbered<StationedStep>[]>(),
    jumpsAt = new Map<string, Numbered<Jump>[]>();
  let jumps = 0;
  for (const [number, placed] of allSteps(scenario).entries()) {
    const { at } = placed.step;
    remembered(stepsAt, at, () => []).push({ thing: placed, number });
    for (const { path, find } of findsOf(placed)) {
      if (find.then.kind !== 'back') continue;
      const target = stepsByName(placed.route).get(find.then.to)?.step.at;
      if (target === undefined || target === at) continue;
      const jump = { thing: { path, at, target }, number: jumps++ };
      for (const station of [at, target]) remembered(jumpsAt, station, () => []).push(jump);
    }
  }
  return { stepsAt, jumpsAt };
}

/** What belongs to any of the stations, each once, in the order of the scenario. */
export function inOrder<Thing>(
  stations: readonly string[],
  byStation: ReadonlyMap<string, readonly Numbered<Thing>[]>,
): Thing[] {
  const all = new Set(stations.flatMap((station) => byStation.get(station) ?? []));
  return [...all].toSorted((a, b) => a.number - b.number).map(({ thing }) => thing);
}
