import { CARRIER, CREW } from '../../flow/model/model.js';
import type { Model } from '../../flow/model/model.js';
import { ALWAYS } from '../calendar/book.js';
import type { CalendarBook } from '../calendar/book.js';
import type { Carriers, Team } from '../types/carriers.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, whole } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { column } from '../whole/columns.js';
import { NO_DRAW } from '../whole/draws.js';
import type { Draws } from '../whole/draws.js';
import { found, siteOf } from '../whole/ids.js';
import type { Names } from '../whole/ids.js';
import type { LaidRoutes } from '../work/route.js';

const stretch = {
  from: name('the name of a step').describe(
    'The first step at which it is with the unit. It is claimed there together with the other ' +
      'needs of the step, or at the first later step that the unit does. Example: set up frame',
  ),
  to: name('the name of a step').describe(
    'The last step at which it is with the unit; of the same route, `from` itself or a later ' +
      'one. It is given back when the unit has left this step for one beyond. Example: receive',
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
          'The time from the end of `to` until it can be claimed again, cleaning and setting up ' +
            'included. Lifting and handling follow local codes. Default: 0 min. Example: 3 h',
        ),
      hours: name('the name of a calendar')
        .optional()
        .describe(
          'When carriers are brought back: a calendar in the zone of the site of `to`; the way back ' +
            'stops outside it and goes on. Default: any time. Example: days',
        ),
    },
    'carriers: a map with the keys count, from and to, such as { count: 12, from: set up frame, ' +
      'to: receive }',
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
  'a team: a map with the keys crew, people, from and to, such as { crew: technicians, people: ' +
    '2, from: fit battery, to: hand over }',
).transform((t): Team => ({ crew: t.crew, people: t.people, from: t.from, to: t.to }));

/** Carriers, then teams, each in the order of the scenario. */
export function compileStays(
  scenario: Scenario,
  names: Names,
  laid: LaidRoutes,
  resources: Model['resources'],
  book: CalendarBook,
  draws: Draws,
): Model['stays'] {
  const siteOfStep = (name: string): string => {
    const step = laid.steps[found(laid.stepId, name, 'step')];
    if (step.kind !== 'step')
      throw new Error(
        `expected a step at a station, saw '${name}'; the scenario must be checked before it is compiled`,
      );
    return found(names.siteOfStation, step.step.at, 'station');
  };
  const carriers = Object.entries(scenario.carriers).map(([name, { from, to, return: back, hours }]) => ({
    name,
    from,
    to,
    amount: 1,
    resource: resources.names.findIndex((each, r) => each === name && resources.kind[r] === CARRIER),
    returnDraw: draws.add(`${name}/return`, back),
    returnCalendar: book.id(hours, siteOf(scenario, siteOfStep(to)).zone),
  }));
  const teams = Object.entries(scenario.teams).map(([name, { from, to, crew, people }]) => ({
    name,
    from,
    to,
    amount: people,
    resource: names.crew(siteOfStep(from), crew),
    returnDraw: NO_DRAW,
    returnCalendar: ALWAYS,
  }));
  const rows = [...carriers, ...teams];
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    resource: column(rows, (row) => row.resource),
    amount: column(rows, (row) => row.amount),
    from: column(rows, (row) => found(laid.stepId, row.from, 'step')),
    to: column(rows, (row) => found(laid.stepId, row.to, 'step')),
    returnDraw: column(rows, (row) => row.returnDraw),
    returnCalendar: column(rows, (row) => row.returnCalendar),
  };
}

/**
 * Calendars of the teams that are with a unit at a step: the work of the step goes on in their hours only.
 */
export function teamCalendars(
  { stays, resources }: Pick<Model, 'stays' | 'resources'>,
  step: number,
): number[] {
  return [...stays.resource].flatMap((resource, s) =>
    resources.kind[resource] === CREW && stays.from[s] <= step && step <= stays.to[s]
      ? [resources.calendar[resource]]
      : [],
  );
}
