import type { Scenario } from '../types/scenario.js';
import type { Condition, LaneStep, RouteEntry, StationStep } from '../types/steps.js';
import { bankName, finder, foundIn, hasBankPlaces } from './ids.js';
import { lanesBack, nameAt, waysBackOf } from './ways-back.js';

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
      /** On a way back: the step that follows. */
      readonly onTo?: number;
    };

export interface LaidRoutes {
  readonly steps: readonly LaidStep[];
  /** First step of each route, and the one behind the last, where the ways back begin. */
  readonly firstStep: readonly number[];
  /**
   * Id of a station step by name; of a step side by side, that of its group, where the unit is when it does
   * it.
   */
  stepId(name: string): number;
  /** The station at which a step is done. */
  stationOf(step: string): string;
  /** First step of the way by which a step sends units back to one at another site; -1: none. */
  wayBack(from: string, to: string): number;
}

/**
 * Lays all routes one after the other: the unit's, then the feeders'; then the ways back, which are in no
 * route: only who is sent back comes to them. Ids of steps are positions in the list.
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
  const named = finder(
    'step',
    new Map(
      steps.flatMap((laid, id) =>
        laid.kind === 'step' ? [[laid.name, { id: laid.group ?? id, at: laid.step.at }] as const] : [],
      ),
    ),
  );
  const stepId = (name: string): number => named(name).id,
    ways = layWaysBack(scenario, steps, stepId);
  return {
    steps,
    firstStep,
    stepId,
    stationOf: (step) => named(step).at,
    wayBack: (from, to) => ways.get(wayKey(stepId(from), stepId(to))) ?? -1,
  };
}

const wayKey = (from: number, to: number): string => `${from} to ${to}`;

/** Adds the ways back; the first step of each by the steps between which it leads. */
function layWaysBack(
  scenario: Scenario,
  steps: LaidStep[],
  stepId: (name: string) => number,
): ReadonlyMap<string, number> {
  const ways = new Map<string, number>();
  for (const back of waysBackOf(scenario)) {
    const { route, routeId, from, to } = back,
      [finder, target] = [from, to].map((index) => stepId(nameAt(route, index))) as [number, number],
      key = wayKey(finder, target),
      first = steps.length;
    if (ways.has(key)) continue;
    const way = (lanesBack(scenario, back) ?? []).flatMap((lane) =>
      laidLane({ kind: 'lane', lane, when: {} }, routeId, scenario),
    );
    ways.set(key, first);
    steps.push(...way.map((one, i) => ({ ...one, onTo: i + 1 < way.length ? first + i + 1 : target })));
  }
  return ways;
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
  return laidLane(entry, route, scenario);
}

function laidLane(
  { lane, when }: LaneStep,
  route: number,
  scenario: Scenario,
): (LaidStep & { kind: 'lane' | 'bank' })[] {
  const drive: LaidStep & { kind: 'lane' } = { kind: 'lane', name: lane, route, when, lane };
  if (!hasBankPlaces(foundIn(scenario.lanes, lane, 'lane'))) return [drive];
  return [drive, { kind: 'bank', name: bankName(lane), route, when, lane }];
}
