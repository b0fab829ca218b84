import { allSteps, type PlacedStep } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Chance, StationStep } from '../../scenario/types/steps.js';
import { remembered } from '../../scenario/values/raw.js';

/** A step of the scenario, and where it stands: a path of the section `measured`. */
export interface StepPlace {
  readonly path: string;
  readonly step: StationStep;
  /** Some of its people take up again in a shift of theirs what they began. */
  readonly waitsForOwn: boolean;
}

export const pathOf = (step: string, feeder?: string): string =>
  `${feeder === undefined ? 'route' : `feeders.${feeder}.route`}[${step}]`;

/** The steps of a scenario by name, of several the first; what holds steps side by side is none. */
export function stepPlaces(scenario: Scenario): ReadonlyMap<string, StepPlace> {
  const places = new Map<string, StepPlace>();
  for (const { step, route, where } of allSteps(scenario))
    if (step.sideBySide === undefined)
      remembered(places, step.name, () => ({
        path: pathOf(step.name, route.feeder),
        step,
        waitsForOwn: Object.keys(step.crew).some(
          (name) => where?.site.crews[name]?.shifts?.handOver === 'wait',
        ),
      }));
  return places;
}

/** A chance of the scenario, and its path. */
export interface ChancePlace {
  readonly step: string;
  readonly path: string;
  readonly chance: Chance;
}

/** An inspection that looks for a kind of defect. */
export interface LookPlace extends ChancePlace {
  /** Every unit comes to it: it has no condition and is no sample. */
  readonly isForAll: boolean;
}

/** A step that makes a kind of defect, and the inspections that look for it from there on, in their order. */
export interface MakerPlace extends ChancePlace {
  readonly looks: readonly LookPlace[];
}

/**
 * Who makes a kind of defect. Inspections of the maker's own route come first, then those of feeders that its
 * part may have gone into, then those of the unit.
 */
export function makersOf(scenario: Scenario, kind: string): MakerPlace[] {
  const steps = allSteps(scenario).filter(({ step }) => step.sideBySide === undefined);
  return steps.flatMap((maker) => {
    const chance = maker.step.creates[kind];
    if (chance === undefined) return [];
    const nearness = ({ route }: PlacedStep): number =>
      route === maker.route ? 0 : route.feeder === undefined ? 2 : 1;
    const looks = steps
      .filter(
        (each) =>
          each.step.finds[kind] !== undefined &&
          (each.route === maker.route ? each.index >= maker.index : maker.route.feeder !== undefined),
      )
      .sort((a, b) => nearness(a) - nearness(b))
      .flatMap((each) => lookOf(each, kind));
    const { name } = maker.step;
    return [{ step: name, path: `${pathOf(name, maker.route.feeder)}.creates.${kind}`, chance, looks }];
  });
}

function lookOf({ step, route }: PlacedStep, kind: string): LookPlace[] {
  const find = step.finds[kind];
  return find === undefined
    ? []
    : [
        {
          step: step.name,
          path: `${pathOf(step.name, route.feeder)}.finds.${kind}.chance`,
          chance: find.chance,
          isForAll: Object.keys(step.when).length === 0 && step.sample === undefined,
        },
      ];
}

/** One chance for all units; undefined where it differs by option. */
export const oneChance = (place: ChancePlace | undefined): number | undefined =>
  place === undefined || place.chance.byOption.length > 0 ? undefined : place.chance.usual;

/** Where the time of a step stands in a scenario, or why what a clock shows has no place there. */
export type TimePlace =
  | { readonly path: string; readonly isProcess: boolean }
  | { readonly path: null; readonly why: string };

/** @param isWhole the time is from start to end; else it may be that of the work alone */
export function timePlace({ path, step, waitsForOwn }: StepPlace, isWhole: boolean): TimePlace {
  const { work, passes, process, attendedEnd, comparesWith, hold } = step,
    none = (why: string): TimePlace => ({ path: null, why });
  if (hold !== undefined) return none('At a hold a unit takes what was left to it; nothing is written.');
  if (isWhole && waitsForOwn)
    return none(
      'Who began it ends it in a shift of theirs (`hand over: wait`), and waits; nothing is written.',
    );
  if (isWhole && comparesWith?.differs !== undefined)
    return none('Where two measurements differ there is extra work in these times; nothing is written.');
  if (work !== undefined && process !== undefined && isWhole)
    return none('From start to end is work and process together; nothing is written.');
  if (passes !== undefined && (passes.count > 1 || passes.settle !== undefined || process !== undefined))
    return none('From start to end is several passes, or a wait besides; nothing is written.');
  if (passes !== undefined) return { path: `${path}.passes.work`, isProcess: false };
  if (work !== undefined) return { path: `${path}.work`, isProcess: false };
  if (process === undefined || !isWhole)
    return none('The step has no `work` in the scenario; nothing is written.');
  if (attendedEnd) return none('The process waits for somebody at its end; nothing is written.');
  return { path: `${path}.process`, isProcess: true };
}
