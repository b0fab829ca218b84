import type { Scenario } from '../types/scenario.js';
import type { Condition, RouteEntry, StationStep } from '../types/steps.js';
import { bankName, foundIn } from './ids.js';

/**
 * A step of the model before it has columns; `group`: of a step that is done side by side with others, that
 * of theirs. The wait in the bank after a lane is a step without work.
 */
export type LaidStep =
  | {
      readonly kind: 'step';
      readonly name: string;
      readonly route: number;
      readonly when: Condition;
      readonly step: StationStep;
      readonly group?: number;
    }
  | {
      readonly kind: 'lane' | 'bank';
      readonly name: string;
      readonly route: number;
      readonly when: Condition;
      readonly lane: string;
    };

export interface LaidRoutes {
  readonly steps: readonly LaidStep[];
  /** First step of each route, and the number of steps. */
  readonly firstStep: readonly number[];
  /**
   * Id of a station step by name; of a step side by side, that of its group, where the unit is when it does
   * it.
   */
  readonly stepId: ReadonlyMap<string, number>;
}

/**
 * Lays all routes one after the other: the unit's, then the feeders'. Ids of steps are positions in the list.
 */
export function layRoutes(scenario: Scenario): LaidRoutes {
  const steps: LaidStep[] = [];
  const firstStep: number[] = [];
  [scenario.route, ...Object.values(scenario.feeders).map((feeder) => feeder.route)].forEach(
    (entries, route) => {
      firstStep.push(steps.length);
      for (const entry of entries) steps.push(...laid(entry, route, scenario, steps.length));
    },
  );
  firstStep.push(steps.length);
  return {
    steps,
    firstStep,
    stepId: new Map(
      steps.flatMap((step, id) => (step.kind === 'step' ? [[step.name, step.group ?? id] as const] : [])),
    ),
  };
}

function laid(entry: RouteEntry, route: number, scenario: Scenario, id: number): LaidStep[] {
  if (entry.kind === 'step') {
    const one = (step: StationStep): LaidStep & { kind: 'step' } => ({
      kind: 'step',
      name: step.name,
      route,
      when: step.when,
      step,
    });
    return [one(entry), ...(entry.sideBySide ?? []).map((step) => ({ ...one(step), group: id }))];
  }
  const { lane, when } = entry;
  const drive: LaidStep = { kind: 'lane', name: lane, route, when, lane };
  if (foundIn(scenario.lanes, lane, 'lane').arrivalBank === undefined) return [drive];
  return [drive, { kind: 'bank', name: bankName(lane), route, when, lane }];
}
