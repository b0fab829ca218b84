import { meanOf } from '../../random/distribution.js';
import type { StepPaths } from '../../scenario/changes/work-paths.js';
import { allSteps } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { nearest } from '../../scenario/values/nearest.js';
import { own } from '../../scenario/values/raw.js';
import type { FactorsNow } from './beyond.js';
import type { WorkFactor } from './factors.js';

/** Where what was fitted to the times of a step stands in a scenario, and what applies to it there. */
export interface StepPlace {
  /** Of its work; null where that has none, and why. */
  readonly path: string | null;
  readonly notWritten: string | null;
  /** Why times cannot go by an option, in a sentence; null where they can. */
  readonly whyNot: (option: string, values: readonly string[]) => string | null;
  /** Paths with what stands there of factors, as YAML takes it. */
  readonly written: (factors: readonly WorkFactor[]) => readonly FactorWritten[];
  /** Mean minutes of the work in the scenario, without factors; null where it changes from unit to unit. */
  readonly now: number | null;
  readonly factorsNow: FactorsNow;
  /**
   * What has to be known of the times there, a sentence each.
   * @param taken options that were taken out of the times
   * @param mean minutes, of what is left
   */
  readonly notes: (taken: readonly string[], mean: number) => readonly string[];
}

/** One or more options in one value of the scenario. */
export interface FactorWritten {
  readonly path: string;
  /** Factors by value, or by option and value. */
  readonly value: Readonly<Record<string, unknown>>;
}

/** Of a step of the main route of a scenario that is not known. */
export const anyPlace = (step: string): StepPlace => ({
  path: `route.${step}.work`,
  notWritten: null,
  whyNot: () => null,
  written: (factors) => together(`route.${step}.work factor`, factors),
  now: null,
  factorsNow: {},
  notes: () => [],
});

/**
 * Places of the steps of a scenario, by name.
 * @param paths those of the steps, all of which the scenario has
 */
export function placesIn(
  scenario: Scenario,
  paths: ReadonlyMap<string, StepPaths>,
): (step: string) => StepPlace {
  const steps = new Map(
      allSteps(scenario)
        .map((placed) => [placed.step.name, placed] as const)
        .toReversed(),
    ),
    options = scenario.programme.options;
  return (name) => {
    const placed = steps.get(name),
      found = paths.get(name);
    if (placed === undefined || found?.work == null)
      return {
        ...anyPlace(name),
        path: null,
        notWritten: 'The step has no work in the scenario; nothing is written.',
        whyNot: () => 'the step has no work in the scenario',
      };
    const { work, passes, learning, workFactor } = placed.step,
      path = `${found.step}.work factor`,
      now = passes?.work ?? work;
    return {
      path: found.work,
      notWritten: null,
      whyNot: (option, values) =>
        placed.route.kind === 'stock'
          ? 'parts for stock are not yet of a unit with options'
          : whyNoOption(option, own(options, option), Object.keys(options), values),
      written: (factors) =>
        Object.keys(workFactor).length === 0
          ? together(path, factors)
          : factors.map(({ option, factors: value }) => ({ path: `${path}.${option}`, value })),
      now: now === undefined || learning !== undefined ? null : meanOf(now),
      factorsNow: workFactor,
      notes: (taken, mean) => [
        ...(passes === undefined ? [] : passesNotes(passes.count, mean / meanOf(passes.work))),
        ...(learning === undefined
          ? []
          : ['Its learning still applies: the times should be those of the first unit.']),
        ...Object.keys(workFactor)
          .filter((option) => !taken.includes(option))
          .map((option) => `Its work factor by ${option} still applies to what was fitted.`),
      ],
    };
  };
}

/** @param ratio of what was clocked to the work of one pass in the scenario */
function passesNotes(count: number, ratio: number): string[] {
  if (count === 1) return ['The times are taken to be those of the pass, without the wait that follows it.'];
  return [
    `The times are taken to be of one of its ${count} passes, without the wait after it.`,
    ...(ratio > Math.sqrt(count)
      ? [`Their mean is nearer to that of all ${count} passes: clock one, or divide the times by ${count}.`]
      : []),
  ];
}

function whyNoOption(
  option: string,
  values: Readonly<Record<string, number>> | undefined,
  options: readonly string[],
  seen: readonly string[],
): string | null {
  const meant = (name: string, names: readonly string[]): string => {
    const near = nearest(name, names);
    return near === undefined ? '' : `, did you mean ${near}?`;
  };
  if (values === undefined) return `the scenario has no option ${option}${meant(option, options)}`;
  const unknown = seen.find((value) => !Object.hasOwn(values, value));
  return unknown === undefined
    ? null
    : `its option ${option} has no value ${unknown}${meant(unknown, Object.keys(values))}`;
}

const together = (path: string, factors: readonly WorkFactor[]): FactorWritten[] =>
  factors.length === 0
    ? []
    : [{ path, value: Object.fromEntries(factors.map((each) => [each.option, each.factors])) }];
