import type { Model } from '../../flow/model/model.js';
import { CARRIER } from '../../flow/model/resources.js';
import { ALWAYS } from '../calendar/book.js';
import { calendarName } from '../calendar/calendars.js';
import { int32, uint8 } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import { siteOf } from '../lookup/ids.js';
import { keys } from '../values/keys.js';
import { whole } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { stretchKeys } from './stretches.js';

export function carriersSchema(time: TimeSchema) {
  return keys(
    {
      count: whole(1, 10_000).describe('How many there are. Example: 12'),
      ...stretchKeys,
      return: time
        .prefault('0 min')
        .describe(
          'The time from the end of `to` until it can be claimed again, including cleaning and ' +
            'set-up. Lifting and handling follow local codes. Default: 0 min. Example: 3 h',
        ),
      hours: calendarName
        .optional()
        .describe(
          'When carriers are brought back: a calendar in the zone of the site of `to`; the return ' +
            'stops outside it and resumes. Default: any time. Example: days',
        ),
    },
    'carriers: a map with the keys count, from and to, such as { count: 12, from: set up frame, ' +
      'to: receive }',
  );
}

/** Carriers, then teams, each in the order of the scenario. */
export function compileCompanions(
  { scenario, ids, laid, book, draws }: Compilation,
  resources: Model['resources'],
): Model['companions'] {
  const siteOfStep = (name: string): string => ids.siteOfStation(laid.stationOf(name));
  const carriers = Object.entries(scenario.carriers).map(
    ([name, { from, to, inRework, return: back, hours }]) => ({
      name,
      again: inRework === 'again' ? 1 : 0,
      from: laid.stepId(from),
      to: laid.stepId(to),
      amount: 1,
      resource: resources.names.findIndex((each, r) => each === name && resources.kind[r] === CARRIER),
      returnDraw: draws.add(`${name}/return`, back),
      returnCalendar: book.id(hours, siteOf(scenario, siteOfStep(to)).zone),
    }),
  );
  const teams = Object.entries(scenario.teams).map(([name, { from, to, inRework, crew, people }]) => ({
    name,
    again: inRework === 'again' ? 1 : 0,
    from: laid.stepId(from),
    to: laid.stepId(to),
    amount: people,
    resource: ids.crew(siteOfStep(from), crew),
    returnDraw: NO_DRAW,
    returnCalendar: ALWAYS,
  }));
  const rows = [...carriers, ...teams];
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    ...uint8(rows, 'again'),
    ...int32(rows, 'resource', 'amount', 'from', 'to', 'returnDraw', 'returnCalendar'),
  };
}
