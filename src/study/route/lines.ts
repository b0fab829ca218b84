import type { Model } from '../../flow/model/model.js';
import { type Distribution, meanOf } from '../../random/distribution.js';
import { foundIn } from '../../scenario/lookup/ids.js';
import type { LaidStep } from '../../scenario/lookup/laid.js';
import type { PlacedRoute } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { LaneStep, StationStep } from '../../scenario/types/steps.js';
import type { Look } from '../capacity/visits/looks.js';
import { waysBackFrom } from '../capacity/way/ways-back.js';
import type { Back, Entry, Line, MappedStep, Stop, Trip } from './types.js';

/** What the lines of all routes are drawn from. */
export interface Ground {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly siteOf: (station: string) => string;
  /** Steps of the model, and what they find by arithmetic. */
  readonly laid: readonly LaidStep[];
  readonly looks: ReadonlyMap<number, Look>;
  /** Stations drawn so far. */
  readonly drawn: Set<string>;
}

/** The entries of a route in their order, and its send-backs. */
export function lineOf(ground: Ground, route: PlacedRoute): Line & { readonly at: Map<string, number> } {
  const entries: Entry[] = [],
    at = new Map<string, number>();
  for (const entry of route.entries) {
    if (entry.kind === 'lane') {
      entries.push(tripOf(ground.scenario, entry));
      continue;
    }
    const last = entries.at(-1),
      steps = mappedSteps(ground, entry);
    if (last?.kind === 'stop' && last.station === entry.at && !takesOff(last))
      entries[entries.length - 1] = { ...last, steps: [...last.steps, ...steps] };
    else entries.push(stopOf(ground, entry.at, steps));
    for (const { name } of [entry, ...(entry.sideBySide ?? [])]) at.set(name, entries.length - 1);
  }
  return { entries, at, backs: backsOf(ground, route, at) };
}

/** What comes off is on its way before the next step, which may be the one that takes it back. */
const takesOff = ({ steps }: Stop): boolean => steps.some(({ step }) => step.takesOff.length > 0);

function stopOf({ siteOf, drawn }: Ground, station: string, steps: readonly MappedStep[]): Stop {
  const isAgain = drawn.has(station);
  drawn.add(station);
  return { kind: 'stop', station, site: siteOf(station), isAgain, steps };
}

const mappedSteps = (ground: Ground, entry: StationStep): MappedStep[] =>
  (entry.sideBySide ?? [entry]).map((step, i) => {
    const { passes, work, process } = step,
      count = passes?.count ?? 1,
      settleMin = mean(passes?.settle);
    return {
      step,
      isBeside: i > 0,
      workMin: count * mean(passes?.work ?? work) + (count - 1) * settleMin,
      unattendedMin: settleMin + mean(process),
      passes: passesOf(ground, step),
    };
  });

const mean = (time: Distribution | undefined): number => (time === undefined ? 0 : meanOf(time));

const idOf = ({ laid }: Ground, { name }: StationStep): number =>
  laid.findIndex((each) => each.kind === 'step' && each.name === name);

function passesOf(ground: Ground, step: StationStep): number | null {
  if (step.fails === undefined && Object.keys(step.finds).length === 0) return null;
  const look = ground.looks.get(idOf(ground, step));
  return look === undefined || look.units <= 0 ? 1 : look.clear / look.units;
}

/** By finding step, then by the step it sends back to. */
function backsOf(ground: Ground, route: PlacedRoute, at: ReadonlyMap<string, number>): Back[] {
  const steps = route.entries.flatMap((entry) =>
    entry.kind === 'step' ? [entry, ...(entry.sideBySide ?? [])] : [],
  );
  return steps.flatMap((step) => {
    const finds = [...Object.values(step.finds), ...(step.fails === undefined ? [] : [step.fails])],
      targets = new Set(finds.flatMap(({ then }) => (then.kind === 'back' ? [then.to] : []))),
      look = ground.looks.get(idOf(ground, step));
    return [...targets].map((to): Back => {
      const target = ground.laid.findIndex((each) => each.kind === 'step' && each.name === to),
        laid = ground.laid[target],
        id = laid?.kind === 'step' ? (laid.group ?? target) : target,
        sent = look?.sentTo.get(id) ?? 0;
      return {
        from: step.name,
        to,
        fromEntry: at.get(step.name) ?? 0,
        toEntry: at.get(to) ?? 0,
        chance: look === undefined || look.units <= 0 ? 0 : sent / look.units,
        by: lanesTo(ground.model, idOf(ground, step), id),
      };
    });
  });
}

const lanesTo = (model: Model, from: number, to: number): string[] =>
  (waysBackFrom(model, from).get(to) ?? []).flatMap(
    (at) => model.lanes.names[model.steps.lane[at] ?? -1] ?? [],
  );

/** A lane with its mean times. */
export function tripOf({ lanes }: Scenario, { lane: name, when }: Pick<LaneStep, 'lane' | 'when'>): Trip {
  const { from, to, load, drive, unload, return: back } = foundIn(lanes, name, 'lane');
  return {
    kind: 'trip',
    lane: name,
    from,
    to,
    when,
    loadMin: meanOf(load),
    driveMin: meanOf(drive),
    unloadMin: meanOf(unload),
    returnMin: meanOf(back),
  };
}
