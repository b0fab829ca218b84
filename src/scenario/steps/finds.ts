import { z } from 'zod';
import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { CARRY, REPAIR, SCRAP, SEND_BACK } from '../../flow/model/quality.js';
import { saySeen } from '../file/problem.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { LaidRoutes } from '../lookup/laid.js';
import { allSteps, findsOf, type PlacedStep, stepsByName, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Chance, Find } from '../types/steps.js';
import { keys, name, oneOrMore, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { limitOf, mark, whole, word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { timeByOptionSchema } from '../values/time-by-option.js';
import { chanceByOption, isAlways, isAlwaysForSome, type Times } from './chances.js';

const FIND_WANTED =
  'what is found and what then, such as { chance: 85 %, repair: 25 min }, { chance: 90 %, back ' +
  'to: prime }, { chance: 80 %, carry: 30 min } or { chance: 100 %, scrap: true }';

/** What an inspection finds of a defect, or how a test fails, and what follows. */
export function findSchema(time: TimeSchema) {
  const byOption = timeByOptionSchema(time);
  return keys(
    {
      chance: chanceByOption.describe(
        'The chance that it is found (of a test: that it fails), also by option: { usual: 4 %, ' +
          'colour: { red: 7 % } }. Example: 85 %',
      ),
      repair: byOption
        .optional()
        .describe(
          'Repaired in place; the repair time, also by option: { usual: 25 min, colour: { red: 40 min ' +
            '} }. Example: 25 min',
        ),
      'back to': name('the name of a step')
        .optional()
        .describe(
          'The unit is sent back to this step, the same or an earlier one of its route, and goes ' +
            'forward again from there. To a step at another site it goes by a lane that leads there ' +
            '(see `by`), and comes again by the lanes of its route. Example: prime',
        ),
      by: oneOrMore(name('the name of a lane'), 'the name of a lane, or a list of them')
        .optional()
        .describe(
          'The lane by which the unit is sent back to a step at another site, or lanes one after the ' +
            'other. Default: the fewest lanes that lead there, of equally few the first in the file. ' +
            'Example: final plant to paint shop',
        ),
      limit: z
        .union([whole(1), word('unlimited')], { error: 'a whole number from 1 to 1,000,000, or unlimited' })
        .optional()
        .describe(
          'Maximum number of send-backs per unit, up to 1,000,000; or `unlimited`: as often as it takes. ' +
            'Default: 5',
        ),
      'at limit': word('pass', 'scrap')
        .optional()
        .describe(
          'At the limit the unit goes on with the item open (`pass`, default) or is scrapped ' +
            '(`scrap`). An item left open is noted, and mended at the next step with `hold`, if there ' +
            'is one.',
        ),
      scrap: mark.optional().describe('True: the unit is scrapped.'),
      carry: byOption
        .optional()
        .describe(
          'It is noted and the unit goes on with it; it is mended at the next step with `hold`, where ' +
            'it takes this work, also by option. Example: 30 min',
        ),
    },
    FIND_WANTED,
  )
    .superRefine(
      together(({ repair, backTo, by, scrap, carry, limit, atLimit }, wrong) => {
        const said = Object.entries({ repair, 'back to': backTo, scrap, carry })
          .filter(([, value]) => value !== undefined)
          .map(([key]) => key);
        if (said.length !== 1)
          wrong(
            [],
            'exactly one of repair, back to, carry and scrap: true',
            said.length === 0 ? 'none of them' : said.join(' and '),
          );
        for (const [key, value] of Object.entries({ by, limit, 'at limit': atLimit }))
          if (value !== undefined && backTo === undefined)
            wrong([key], `${key} only together with back to`, saySeen(key === 'by' ? by?.join(', ') : value));
        if (limit === 'unlimited' && atLimit !== undefined)
          wrong(['at limit'], 'at limit only with a limit, which may not be unlimited', saySeen(atLimit));
      }),
    )
    .transform(({ chance, repair, backTo: to, by, carry, limit = 5, atLimit = 'pass' }): Find => {
      if (repair !== undefined) return { chance, then: { kind: 'repair', work: repair } };
      if (to !== undefined) return { chance, then: { kind: 'back', to, limit: limitOf(limit), atLimit, by } };
      return { chance, then: carry === undefined ? { kind: 'scrap' } : { kind: 'carry', work: carry } };
    });
}

/** Whether what is found may be noted and left open: carried on, or passed on at the limit of a loop. */
export const makesNote = ({ then }: Find): boolean =>
  then.kind === 'carry' || (then.kind === 'back' && then.limit !== undefined && then.atLimit === 'pass');

/**
 * Loops that cannot end, tests that every unit fails: every unit would go round, or be scrapped. Without a
 * limit it is enough that some unit would.
 */
export function* loopFindings(scenario: Scenario): Iterable<Finding> {
  for (const placed of allSteps(scenario)) {
    const isForAll = placed.step.sample === undefined && placed.step.rework === 'both';
    for (const { path, kind, find } of findsOf(placed)) {
      if (!isForAll && !isUnlimited(find)) continue;
      const why = isSure(find)(find.chance) ? endless(placed, kind, find) : undefined;
      if (why !== undefined)
        yield { path: [...path, 'chance'], wanted: `a chance below 100 %: ${why}`, seen: '100 %' };
    }
  }
}

const isUnlimited = ({ then }: Find): boolean => then.kind === 'back' && then.limit === undefined;
const isSure = (find: Find): ((chance: Chance) => boolean) =>
  isUnlimited(find) ? isAlwaysForSome : isAlways;

/** Why a find that is sure must not be. */
function endless({ route, index }: PlacedStep, kind: string | undefined, find: Find): string | undefined {
  const { then } = find;
  if (then.kind === 'scrap' && kind === undefined) return 'every unit would be scrapped';
  if (then.kind !== 'back') return undefined;
  const [who, until] = isUnlimited(find) ? ['some units', 'for ever'] : ['every unit', 'until the limit'];
  if (kind === undefined) return `${who} would fail and go back ${until}`;
  const steps = stepsOf(route),
    target = stepsByName(route).get(then.to)?.index ?? Infinity;
  const again = steps
    .filter((each) => target <= each.index && each.index <= index)
    .some(({ step }) => {
      const chance = own(step.creates, kind);
      return (
        chance !== undefined &&
        isSure(find)(chance) &&
        step.rework !== 'skip' &&
        (isUnlimited(find) || (step.sample === undefined && Object.keys(step.when).length === 0))
      );
    });
  return again ? `the defect is always made again, so ${who} would go back ${until}` : undefined;
}

const KIND = { repair: REPAIR, carry: CARRY, scrap: SCRAP, back: SEND_BACK } as const,
  WORK = { repair: 'repair', carry: 'carried' } as const;

interface Then {
  readonly kind: number;
  readonly repairTime: number;
  readonly target: number;
  readonly way: number;
  readonly limit: number;
  readonly scrapAtLimit: boolean;
}

/** What follows finds, numbered as they are added. */
export class Thens {
  private readonly rows: Then[] = [];
  constructor(
    private readonly times: Times,
    private readonly laid: LaidRoutes,
  ) {}

  /** `what` is the kind of defect, or the failed test, for the stream of the repair. */
  add(step: string, what: string, { then }: Find): number {
    const back = then.kind === 'back' ? then : undefined;
    return (
      this.rows.push({
        kind: KIND[then.kind],
        repairTime: 'work' in then ? this.times.add(`${step}/${WORK[then.kind]} ${what}`, then.work) : -1,
        target: back === undefined ? -1 : this.laid.stepId(back.to),
        way: back === undefined ? -1 : this.laid.wayBack(step, back.to),
        limit: back === undefined ? 0 : (back.limit ?? UNLIMITED),
        scrapAtLimit: back?.atLimit === 'scrap',
      }) - 1
    );
  }

  columns(): Model['thens'] {
    const { rows } = this;
    return {
      count: rows.length,
      ...int32(rows, 'kind', 'repairTime', 'target', 'way', 'limit'),
      ...uint8(rows, 'scrapAtLimit'),
    };
  }
}
