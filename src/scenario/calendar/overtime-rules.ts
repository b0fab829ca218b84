import type { Model } from '../../flow/model/model.js';
import type { OvertimeColumns } from '../../flow/model/time.js';
import { at } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { foundIn } from '../lookup/ids.js';
import type { OvertimeRule } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import type { Programme } from '../types/programme.js';
import { keys, name, together } from '../values/keys.js';
import { spell, whole } from '../values/scalars.js';
import { isoWeek } from './date.js';

/** Overtime that is worked when units are behind. */
export const ruleSchema = keys(
  {
    'units behind': whole(1).describe('Worked if at least this many units are due and not out. Example: 3'),
    'lead time': spell
      .optional()
      .describe(
        'A unit is due this long after its planned release, by the clock, nights and weekends ' +
          'included. Default: units are due at their due dates (`due` in the build list, or `due after`). ' +
          'Example: 12 days',
      ),
    'due within': spell
      .optional()
      .describe(
        'Without a lead time: units whose due date comes within this time count too, by the clock. ' +
          'Default: only those whose due date has passed. Example: 5 days',
      ),
    at: name('the name of a step')
      .optional()
      .describe('Out means past this step of the route. Default: shipped (or scrapped). Example: dress up'),
  },
  'a rule, such as { units behind: 3, lead time: 12 days }, or by due dates { units behind: 3 }',
).superRefine(
  together(({ leadTime, dueWithin }, wrong) => {
    if (leadTime !== undefined && dueWithin !== undefined)
      wrong(['due within'], 'either a lead time, or due dates with due within, not both', 'both');
  }),
);

/** Why nobody knows beforehand when units are due. */
export function whyNotDue(
  { release, orders: { list, dueAfterMin } }: Programme,
  { leadTimeMin }: OvertimeRule,
): Omit<Finding, 'path'> | undefined {
  const isPlanned = release.kind === 'rate';
  if (leadTimeMin !== undefined)
    return isPlanned
      ? undefined
      : {
          wanted:
            'a programme with a `rate`, which says when units are due; leave the rule out or give a rate',
          seen: 'none',
        };
  if (dueAfterMin === undefined && list.every(({ due }) => due === undefined))
    return {
      wanted: 'a lead time, or units with due dates: `due` in the build list or the opening, or `due after`',
      seen: 'neither',
    };
  return isPlanned || dueAfterMin === undefined
    ? undefined
    : {
        wanted: 'due dates that are known beforehand, not `due after` a release that is drawn',
        seen: 'arrivals',
      };
}

/**
 * The overtime rules of all calendars in use, in the order of their bits. To be called when all calendars
 * are.
 */
export function compileOvertime(
  { scenario, book, laid }: Compilation,
  programme: Model['programme'],
): OvertimeColumns[] {
  return book.rules.flatMap(({ calendar, zone, entry }) => {
    const { when, note } = at(foundIn(scenario.calendars, calendar, 'calendar').overtime, entry);
    if (when === undefined) return [];
    const { behind, leadTimeMin, dueWithinMin = 0, at: stepName, decided } = when,
      periodOf = (day: number): string => (decided === 'daily' ? String(day) : isoWeek(day));
    const periods: number[] = [];
    let period: string | undefined;
    for (const { start, day } of book.roster(calendar, zone)) {
      if (periodOf(day) !== period) periods.push(start);
      period = periodOf(day);
    }
    const step = stepName === undefined ? -1 : laid.stepId(stepName);
    return {
      name: `${calendar} in ${zone}, ${sayRule(when)}${note === undefined ? '' : ` (${note})`}`,
      calendar: book.id(calendar, zone),
      periods: Float64Array.from([...periods, Infinity]),
      due:
        leadTimeMin === undefined
          ? dueDates(programme, step).map((time) => time - dueWithinMin)
          : programme.times.map((time) => time + leadTimeMin),
      byDueDates: leadTimeMin === undefined,
      step,
      behind,
    };
  });
}

/** By build number - 1. A unit that stands behind the step that is counted when the run starts is out. */
function dueDates({ orders, times }: Model['programme'], step: number): Float64Array {
  const { count, dueAt, dueAfter, openingStep } = orders,
    units = dueAfter < Infinity ? Math.max(count, times.length) : count;
  return Float64Array.from({ length: units }, (_, i) => {
    if (step >= 0 && (openingStep[i] ?? -1) > step) return Infinity;
    const own = dueAt[i] ?? Infinity;
    return own < Infinity ? own : (times[i] ?? Infinity) + dueAfter;
  });
}

const sayRule = ({ behind, at, leadTimeMin }: OvertimeRule): string =>
  `${behind} unit${behind === 1 ? '' : 's'} behind${at === undefined ? '' : ` at ${at}`}` +
  (leadTimeMin === undefined ? ' by due date' : '');
