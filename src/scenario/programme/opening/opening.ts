import { z } from 'zod';
import { saySeen } from '../../file/problem.js';
import type { Finding } from '../../types/problem.js';
import type { Scenario } from '../../types/scenario.js';
import type { RouteEntry } from '../../types/steps.js';
import { keys, name, together } from '../../values/keys.js';
import { nearest } from '../../values/nearest.js';
import { own } from '../../values/raw.js';
import { date, duration, optionValue, whole } from '../../values/scalars.js';
import { heldFindings, type Standing } from './held.js';
import { itemFindings } from './item-checks.js';
import { openItemSchema } from './items.js';
import { withoutRoom } from './room.js';

const build = z.union([name('a build number'), z.number().transform(String)], {
  error: 'a build number, such as RT-017',
});

/** A unit that stands on the floor when the run starts, or several alike. */
export const standingSchema = keys(
  {
    at: name('the name of a step or lane').describe(
      'The step that it is about to begin, or the lane whose truck it waits for. Example: inspect primer',
    ),
    units: whole(1, 100_000).default(1).describe('How many such units. Default: 1. Example: 2'),
    build: build.optional().describe('Your own build number of the unit, if it is one. Example: RT-017'),
    due: date.optional().describe('The day at the end of which it is due. Example: 2027-04-30'),
    options: z
      .record(z.string(), optionValue, { error: 'a map from options to values' })
      .default({})
      .describe('What is known of its options; the others are drawn. Example: { colour: red }'),
    done: duration
      .optional()
      .describe(
        'What is done already of its step: minutes of its work, then of its process. What is left is drawn ' +
          'as it takes longer than that. Default: nothing. Example: 35 min',
      ),
    open: z
      .array(openItemSchema, { error: 'a list of items, such as [{ defect: runs, made at: prime }]' })
      .default([])
      .describe(
        'Items that are open on it: defects of earlier steps, hidden or found and not yet mended. ' +
          'Default: none. Example: [{ defect: runs, made at: prime, found at: inspect }]',
      ),
    'sent back by': name('the name of a step')
      .optional()
      .describe(
        'The inspection or test that sent it back and that it has not come to again. Default: of what is ' +
          'found and still to be mended at an earlier step, the furthest that found it. Example: inspect',
      ),
  },
  'a map with the key at, and perhaps units, build, due, options, done, open, sent back by',
).superRefine(
  together(({ build, units }, wrong) => {
    if (build !== undefined && units > 1) wrong(['units'], '1 unit for a build number', String(units));
  }),
);

const nameOf = (entry: RouteEntry): string => (entry.kind === 'lane' ? entry.lane : entry.name);

/** Units that stand at a step that they never come to, where there is no room, or without what they hold. */
export function* openingFindings(scenario: Scenario): Iterable<Finding> {
  const { route } = scenario,
    standing: Standing[] = [];
  for (const order of scenario.programme.orders.list) {
    if (order.at === undefined) continue;
    const index = route.findIndex((entry) => nameOf(entry) === order.at),
      entry = route[index];
    if (entry === undefined) {
      yield {
        ...order.written,
        wanted: "no step or lane of this name in the unit's route",
        seen: saySeen(order.at),
        suggestion: nearest(order.at, route.map(nameOf)),
      };
      continue;
    }
    if (entry.kind === 'lane' && order.doneMin !== undefined)
      yield {
        ...order.written,
        wanted: 'done only at a step; at a lane a unit waits for its truck',
        seen: saySeen(order.at),
      };
    for (const [option, values] of Object.entries(entry.when)) {
      const value = own(order.options, option);
      if (value === undefined || !values.includes(value))
        yield {
          ...order.written,
          wanted: `a unit with ${option}: ${values.join(' or ')}, as only such units come to ${order.at}`,
          seen: value === undefined ? `no ${option}` : saySeen(value),
        };
    }
    standing.push({ order, entry, index });
  }
  // In the order in which the engine places them.
  standing.sort((a, b) => b.index - a.index);
  yield* withoutRoom(scenario, standing);
  yield* heldFindings(scenario, standing);
  yield* itemFindings(scenario, standing);
}
