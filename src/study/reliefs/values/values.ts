import type { Path } from '../../../scenario/types/problem.js';
import type { Assumption, Scenario } from '../../../scenario/types/scenario.js';
import { type ToVary, toVary, type Varied } from '../../../scenario/vary.js';
import type { StudyOptions } from '../../asked.js';
import { type Changed, type Changes, compiled, type Skipped } from '../changes.js';

/** An end of a value that can be run. */
export interface ValueEnd {
  readonly varied: Varied;
  readonly side: 'low' | 'high';
}

/** The guesses and estimates of a scenario; none where it is not known as data. */
export const valuesOf = ({ scenario, data }: Pick<StudyOptions, 'scenario' | 'data'>): ToVary =>
  data === undefined
    ? { assumptions: [], vary: (assumption) => ({ assumption, low: undefined, high: undefined }) }
    : toVary(scenario, data);

export interface ValuesVaried extends Changes<ValueEnd> {
  /** Values that would come next. */
  readonly left: readonly Assumption[];
}

export interface ValuesOptions {
  /** So many at most. */
  readonly most: number;
  readonly base: Changed;
  /** See `bearings`; asked for only where some have to be left. */
  readonly bearing: () => (assumption: Assumption) => number;
  /** Of an end the scenario that is run. */
  readonly atRate: (scenario: Scenario) => Scenario;
  readonly signal?: AbortSignal | undefined;
}

/**
 * The first guesses and estimates that can be varied, with their ends: those whose basis is said by itself,
 * then those of which it is said in general; of either first those that bear most, then as in the file. What
 * is asked of the shop is no assumption about it.
 */
export async function valuesVaried(
  { assumptions, vary }: ToVary,
  { most, base, bearing, atRate, signal }: ValuesOptions,
): Promise<ValuesVaried> {
  const ofShop = aboutShop(assumptions),
    order = ofShop.length <= most ? ofShop : inOrder(ofShop, bearing()),
    changes: Changes<ValueEnd>['changes'][number][] = [];
  const skipped: Skipped[] = assumptions
    .filter(({ at }) => isAsked(at))
    .map(({ words }) => ({ what: words, why: 'it says what is asked of the shop' }));
  let taken = 0,
    next = 0;
  for (; taken < most; next++) {
    const assumption = order[next];
    if (assumption === undefined) break;
    const varied = vary(assumption),
      ends = await compiled(
        base,
        SIDES.map((side) => ({
          of: { varied, side },
          what: `${assumption.words}, ${side} end`,
          scenario: () => varied[side] && atRate(varied[side].scenario),
        })),
        signal,
      );
    changes.push(...ends.changes);
    skipped.push(...ends.skipped);
    // What cannot be varied takes no place.
    if (ends.changes.length > 0) taken++;
  }
  return { changes, skipped, left: order.slice(next) };
}

/** Those that say something of the shop. */
export const aboutShop = (assumptions: readonly Assumption[]): Assumption[] =>
  assumptions.filter(({ at }) => !isAsked(at));

/** Of the programme only the mix of options is seen, not chosen: rate, quantity and dates are. */
const isAsked = ([section, key]: Path): boolean => section === 'programme' && key !== 'options';

const SIDES = ['low', 'high'] as const;

function inOrder(
  assumptions: readonly Assumption[],
  bearing: (assumption: Assumption) => number,
): Assumption[] {
  return assumptions
    .map((assumption) => ({
      assumption,
      inGeneral: Number(assumption.inGeneral ?? false),
      bears: bearing(assumption),
    }))
    .sort((a, b) => a.inGeneral - b.inGeneral || b.bears - a.bears)
    .map(({ assumption }) => assumption);
}
