import { bankName } from './compile-names.js';
import type { Condition, RouteEntry, Scenario, StationStep } from './scenario.js';

/** A step of the model before it has columns. The wait in the bank after a lane is a step without work. */
export type LaidStep =
  | { readonly kind: 'step'; readonly name: string; readonly route: number; readonly when: Condition; readonly step: StationStep }
  | { readonly kind: 'lane' | 'bank'; readonly name: string; readonly route: number; readonly when: Condition; readonly lane: string };

export interface LaidRoutes {
  readonly steps: readonly LaidStep[];
  /** First step of each route, and the number of steps. */
  readonly firstStep: readonly number[];
  /** Id of a station step by name. */
  readonly stepId: ReadonlyMap<string, number>;
}

/** Lays all routes one after the other: the unit's, then the feeders'. Ids of steps are positions in the list. */
export function layRoutes(scenario: Scenario): LaidRoutes {
  const steps: LaidStep[] = [];
  const firstStep: number[] = [];
  [scenario.route, ...Object.values(scenario.feeders).map((feeder) => feeder.route)].forEach((entries, route) => {
    firstStep.push(steps.length);
    for (const entry of entries) steps.push(...laid(entry, route, scenario));
  });
  firstStep.push(steps.length);
  return { steps, firstStep, stepId: new Map(steps.flatMap((step, id) => (step.kind === 'step' ? [[step.name, id] as const] : []))) };
}

function laid(entry: RouteEntry, route: number, scenario: Scenario): LaidStep[] {
  if (entry.kind === 'step') return [{ kind: 'step', name: entry.name, route, when: entry.when, step: entry }];
  const { lane, when } = entry;
  const drive: LaidStep = { kind: 'lane', name: lane, route, when, lane };
  if (scenario.lanes[lane].arrivalBank === undefined) return [drive];
  return [drive, { kind: 'bank', name: bankName(lane), route, when, lane }];
}
