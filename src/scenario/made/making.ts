import { z } from 'zod';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayNumber, isoDate } from '../calendar/date.js';
import type { KnownChanges } from '../changes/requires.js';
import { saySeen } from '../file/problem.js';
import type { Making, PossibleChange } from '../types/possible.js';
import type { Finding, Path } from '../types/problem.js';
import type { Programme } from '../types/programme.js';
import { keys } from '../values/keys.js';
import { DATE, isDate } from '../values/quantity.js';
import { date, whole } from '../values/scalars.js';

/** More is a slip of the pen: it is added one by one. */
export const MOST_TIMES = 1000;
const WANTED = 'yes, a day of the calendar, such as "2027-12-01", or a map with times and from';

const ONCE: Making = { times: 1, from: undefined };

/** The key `made`: `true` is those who write YAML 1.1 for yes. */
export const making = z
  .union(
    [
      z.enum(['yes'], { error: WANTED }).transform((): Making => ONCE),
      z
        .string({ error: WANTED })
        .regex(DATE, { error: WANTED, abort: true })
        .refine(isDate, { error: WANTED })
        .transform((from): Making => ({ times: 1, from })),
      z.literal(true, { error: WANTED }).transform((): Making => ONCE),
      keys(
        {
          times: whole(1, MOST_TIMES).default(1).describe('How often it is made. Default: once. Example: 3'),
          from: date
            .optional()
            .describe('The day from which on it is there. Default: the first day. Example: 2027-09-06'),
        },
        'a map with times and from',
      ),
    ],
    { error: WANTED },
  )
  .describe(
    'That the change is made: `yes`, from the first day on; or the day from which on it is there; or a map ' +
      'with times and from. Default: it is not made. Example: 2027-12-01',
  );

/** Since when a change is there: no day, where it is there from the start of the programme on. */
export const sinceOf = (from: string | undefined, { start }: Programme): string | undefined =>
  from !== undefined && from > start ? from : undefined;

/** ISO date of the day at whose start the run is over; undefined: when all is built. */
function endOf({ start, until, lengthMin, warmUpMin, findsWarmUp }: Programme): string | undefined {
  if (until !== undefined || lengthMin === undefined || findsWarmUp !== undefined) return until;
  return isoDate(dayNumber(start) + Math.ceil((warmUpMin + lengthMin) / MINUTES_PER_DAY));
}

/** What cannot be of changes that are made: too often, without others, beside others, too late. */
export function* makingFindings(
  all: readonly PossibleChange[],
  known: KnownChanges,
  programme: Programme,
): Iterable<Finding> {
  const end = endOf(programme);
  for (const { name, made, changes, atMost, requires, excludes } of all) {
    if (made === undefined) continue;
    const at = (...rest: Path): Path => ['costs', 'changes', name, 'made', ...rest],
      { times, from } = made,
      most = changes === undefined ? (atMost ?? Infinity) : 1;
    if (times > most)
      yield {
        path: at('times'),
        wanted:
          changes === undefined
            ? `${most} at most, as its key at most says`
            : '1, since a bundle of edits is made once',
        seen: `${times}`,
      };
    if (from !== undefined && end !== undefined && from >= end)
      yield {
        path: at(),
        wanted: `a day before the programme is over, which is on ${end}`,
        seen: `"${from}"`,
      };
    const since = sinceOf(from, programme) ?? '';
    for (const other of requires) {
      const needed = known.get(other);
      if (needed === undefined) continue;
      const its = needed.made && (sinceOf(needed.made.from, programme) ?? '');
      if (its === undefined)
        yield { path: at(), wanted: `${saySeen(other)} made as well, which it requires`, atKey: true };
      else if (its > since)
        yield {
          path: at(),
          wanted: `a day not before ${its}, when ${saySeen(other)} is there, which it requires`,
          seen: since === '' ? 'the first day' : `"${since}"`,
        };
    }
    for (const other of excludes)
      if (known.get(other)?.made !== undefined)
        yield {
          path: at(),
          wanted: `${saySeen(other)} not made, which it excludes`,
          atKey: true,
        };
  }
}
