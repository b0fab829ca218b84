import { FOUND, KNOWN, NOTED, OPEN, PASSED } from '../../../flow/model/quality.js';
import { saySeen } from '../../file/problem.js';
import { joinIndex } from '../../lookup/joins.js';
import { allSteps, type PlacedStep, routesOf, stepsByName, stepsOf } from '../../lookup/placed.js';
import type { OpenItem, Order } from '../../types/programme.js';
import type { Scenario } from '../../types/scenario.js';
import type { Find } from '../../types/steps.js';
import { keys, name, together } from '../../values/keys.js';
import { own } from '../../values/raw.js';
import { chance } from '../../values/scalars.js';

/** An item that is open on a unit of the opening. */
export const openItemSchema = keys(
  {
    defect: name('the name of a kind of defect')
      .optional()
      .describe('Its kind. Left out: a failed test, carried or passed on. Example: runs'),
    'made at': name('the name of a step')
      .optional()
      .describe(
        'The step that made it, of the unit or of a feeder. Default: the only one behind the unit that ' +
          'makes such items. Example: prime',
      ),
    'found at': name('the name of a step')
      .optional()
      .describe(
        'The inspection or test that found it, which says what follows: the unit is on its way to the ' +
          'step that mends it, or the item is noted until the next `hold`. On a unit that is about to ' +
          'begin that very inspection it is sure to be found. Default: nobody has found it. Example: inspect',
      ),
    chance: chance
      .optional()
      .describe(
        'The chance that it is there, of an item that nobody has found. Default: 100 %. Example: 6 %',
      ),
  },
  'an open item, such as { defect: runs, made at: prime } or { defect: runs, found at: inspect }',
)
  .superRefine(
    together(({ defect, madeAt, foundAt, chance: that }, wrong) => {
      if (defect === undefined && foundAt === undefined)
        wrong([], 'a defect, or the test that failed under found at', 'neither');
      if (defect === undefined && madeAt !== undefined)
        wrong(['made at'], 'made at only with a defect', saySeen(madeAt));
      if (foundAt !== undefined && that !== undefined)
        wrong(['chance'], 'no chance for an item that is found', String(that));
    }),
  )
  .transform(({ chance: that = 1, ...item }): OpenItem => ({ ...item, chance: that }));

/** A unit of the opening in the route: the index at which it stands, and what sent it back. */
export interface StandsAt {
  readonly order: Order;
  readonly index: number;
}

const unitSteps = (scenario: Scenario): ReadonlyMap<string, PlacedStep> => stepsByName(routesOf(scenario)[0]);

/** What a step does with a find of a kind; undefined kind: a failed test. */
export const findAt = ({ step }: PlacedStep, kind: string | undefined): Find | undefined =>
  kind === undefined ? step.fails : own(step.finds, kind);

/** The unit's step of this name that finds or tests. */
export const finderOf = (scenario: Scenario, step: string | undefined): PlacedStep | undefined =>
  step === undefined ? undefined : unitSteps(scenario).get(step);

/** Indices of the steps to which an inspection sends units back. */
export function sendersTargets(scenario: Scenario, { step }: PlacedStep): number[] {
  return [...Object.values(step.finds), ...(step.fails === undefined ? [] : [step.fails])].flatMap(
    ({ then }) => {
      const target = then.kind === 'back' ? unitSteps(scenario).get(then.to) : undefined;
      return target === undefined ? [] : [target.index];
    },
  );
}

/** Index of the step to which a find sends units back; undefined: it does not. */
export function targetOf(scenario: Scenario, find: Find | undefined): number | undefined {
  return find?.then.kind === 'back' ? unitSteps(scenario).get(find.then.to)?.index : undefined;
}

/** The inspection that sent the unit back, as said or as its items tell. */
export function senderOf(scenario: Scenario, { order, index }: StandsAt): PlacedStep | undefined {
  if (order.sentBackBy !== undefined) return unitSteps(scenario).get(order.sentBackBy);
  const senders = (order.open ?? []).flatMap(({ defect, foundAt }) => {
    const finder = finderOf(scenario, foundAt),
      target = finder && targetOf(scenario, findAt(finder, defect));
    return finder !== undefined && target !== undefined && target >= index && finder.index >= index
      ? [finder]
      : [];
  });
  return senders.sort((a, b) => b.index - a.index)[0];
}

/** Index of the first entry of the route that the unit has never been done with. */
export const beenTo = (scenario: Scenario, stands: StandsAt): number =>
  Math.max(stands.index, (senderOf(scenario, stands)?.index ?? -1) + 1);

/** Steps that can have made a kind of item on it: its own behind it, and those of what has joined it. */
export function makersOf(scenario: Scenario, stands: StandsAt, kind: string, foundAt?: string): PlacedStep[] {
  const [unit] = routesOf(scenario),
    finder = finderOf(scenario, foundAt),
    // What was found where it is may have been made there too.
    here = finder?.index === stands.index ? stands.index + 1 : 0,
    end = Math.max(beenTo(scenario, stands), here);
  return allSteps(scenario).filter(({ route, step, index }) => {
    if (!Object.hasOwn(step.creates, kind)) return false;
    const comes = route === unit ? index : (joinIndex(scenario, route, unit) ?? Infinity);
    return comes < end && (route !== unit || mayDo(stands.order, step.when));
  });
}

/** Whether what is known of the options of the unit lets it come to a step. */
const mayDo = ({ options }: Order, when: Readonly<Record<string, readonly string[]>>): boolean =>
  Object.entries(when).every(([option, values]) => {
    const value = own(options, option);
    return value === undefined || values.includes(value);
  });

/**
 * How an item stands: not found; sure to be found where the unit is; found, and the unit on its way to the
 * step that mends it; noted; passed on at the limit. In words why it cannot be.
 */
export function stateOf(scenario: Scenario, stands: StandsAt, item: OpenItem): number | string {
  const finder = finderOf(scenario, item.foundAt);
  if (finder === undefined) return OPEN;
  const { then } = findAt(finder, item.defect) ?? { then: { kind: 'scrap' } },
    { index } = stands,
    isHere = finder.index === index && senderOf(scenario, stands) !== finder && item.defect !== undefined,
    at = finder.step.name;
  if (finder.index >= Math.max(beenTo(scenario, stands), index + 1)) return `it has not come to ${at} yet`;
  if (then.kind === 'scrap') return `a unit with it is scrapped at ${at}`;
  if (then.kind === 'repair') return isHere ? KNOWN : `it is mended at ${at} itself`;
  if (then.kind === 'carry') return isHere ? KNOWN : NOTED;
  if ((unitSteps(scenario).get(then.to)?.index ?? -1) >= index) return FOUND;
  if (isHere) return KNOWN;
  if (then.limit !== undefined && then.atLimit === 'pass') return item.defect === undefined ? NOTED : PASSED;
  return `it is mended at ${then.to}, which the unit has passed`;
}

/** All steps of a kind, for messages. */
export const stepsWith = (scenario: Scenario, has: (placed: PlacedStep) => boolean): string[] =>
  routesOf(scenario).flatMap((route) =>
    stepsOf(route)
      .filter(has)
      .map(({ step }) => step.name),
  );
