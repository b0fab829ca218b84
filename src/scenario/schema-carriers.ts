import type { Carriers, Team } from './scenario-carriers.js';
import { keys, name, whole } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';

const stretch = {
  from: name('the name of a step').describe(
    'The first step at which it is with the unit. It is claimed there together with the other needs of the step, or at the first later step that the unit does. Example: set up frame',
  ),
  to: name('the name of a step').describe(
    'The last step at which it is with the unit; of the same route, `from` itself or a later one. It is given back when the unit has left this step for one beyond. Example: receive',
  ),
};

export function carriersSchema(time: TimeSchema) {
  return keys(
    {
      count: whole(1, 10_000).describe('How many there are. Example: 12'),
      ...stretch,
      return: time
        .prefault('0 min')
        .describe(
          'The time from the end of `to` until it can be claimed again, cleaning and setting up included. Lifting and handling follow local codes. Default: 0 min. Example: 3 h',
        ),
      hours: name('the name of a calendar')
        .optional()
        .describe(
          'When carriers are brought back: a calendar in the zone of the site of `to`; the way back stops outside it and goes on. Default: any time. Example: days',
        ),
    },
    'carriers: a map with the keys count, from and to, such as { count: 12, from: set up frame, to: receive }',
  ).transform(
    (c): Carriers => ({ count: c.count, from: c.from, to: c.to, return: c.return, hours: c.hours }),
  );
}

export const teamSchema = keys(
  {
    crew: name('the name of a crew').describe('The crew, of the site of the steps. Example: technicians'),
    people: whole(1).describe('How many of its people stay with one unit. Example: 2'),
    ...stretch,
  },
  'a team: a map with the keys crew, people, from and to, such as { crew: technicians, people: 2, from: fit battery, to: hand over }',
).transform((t): Team => ({ crew: t.crew, people: t.people, from: t.from, to: t.to }));
