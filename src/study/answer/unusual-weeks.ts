import { count, withInterval } from '../format.js';
import type { ToJudge } from '../held/rate-held.js';
import type { Window } from '../programme/judged-window.js';
import { type UnusualCause, type UnusualWeek, unusualWeeks } from '../programme/unusual-weeks.js';
import type { Planned } from '../sample/planned.js';
import type { Estimate } from '../statistics/estimate.js';
import { amount } from '../statistics/skewed-interval.js';
import { ratio, sumOf } from '../statistics/sums.js';

/** Weeks among those in which a rate is judged that are not like the others, and what the others ship. */
export interface UnusualWeeks {
  readonly unit: 'week' | 'part';
  /** Weeks judged, those without a working day among them. */
  readonly judged: number;
  readonly weeks: readonly UnusualWeek[];
  /** Units shipped per working day of the other weeks; null where there is no other or no unusual one. */
  readonly othersPerDay: Estimate | null;
}

export function unusualAmong(
  plan: Planned,
  { first, last }: Pick<Window, 'first' | 'last'>,
  observations: readonly Pick<ToJudge, 'shippedIn'>[],
  level: number,
): UnusualWeeks {
  const weeks = unusualWeeks(plan, first, last),
    judged = last - first + 1;
  const others = Array.from({ length: judged }, (_, i) => first + i).filter((bucket) =>
      weeks.every((week) => week.bucket !== bucket),
    ),
    days = sumOf(others, (bucket) => plan.clock.buckets.workingDays[bucket]);
  return {
    unit: plan.clock.buckets.unit,
    judged,
    weeks,
    othersPerDay:
      weeks.length === 0 || !(days > 0)
        ? null
        : amount(
            observations.map(({ shippedIn }) =>
              ratio(
                sumOf(others, (bucket) => shippedIn[bucket]),
                days,
              ),
            ),
            level,
          ),
  };
}

/** Weeks named in a sentence at most, those that follow each other for one reason counted once. */
const MOST_NAMED = 4;

/**
 * `2 of the 24 weeks judged are short: 2027-W51 to 2027-W52 (shutdown "winter"); the other 22 ship 3.52 a
 * working day (95 % CI 3.48 to 3.56)`; null where all are alike.
 * @param seen what is done with the weeks
 */
export function unusualClause(
  { unit, weeks, judged, othersPerDay }: UnusualWeeks,
  seen: 'judged' | 'watched',
): string | null {
  if (weeks.length === 0) return null;
  const groups = alike(weeks),
    more = groups.slice(MOST_NAMED).reduce((sum, group) => sum + group.length, 0);
  const named = groups
    .slice(0, MOST_NAMED)
    .map((group) => `${span(group)} (${(group[0]?.causes ?? []).map(say).join(', ')})`);
  const hit = weeks.filter(isHit).length,
    others = judged - weeks.length,
    words = hit === 0 ? 'short' : hit === weeks.length ? 'hit by an outage' : 'short or hit by an outage';
  return (
    `${weeks.length} of the ${count(judged, unit)} ${seen} ${weeks.length === 1 ? 'is' : 'are'} ${words}: ` +
    named.join(', ') +
    (more === 0 ? '' : ` and ${more} more`) +
    (othersPerDay === null
      ? ''
      : `; the other ${others} ${others === 1 ? 'ships' : 'ship'} ` +
        withInterval(othersPerDay, 'a working day'))
  );
}

const isHit = ({ causes }: UnusualWeek): boolean => causes.some(({ kind }) => kind === 'outage');
const say = ({ kind, what }: UnusualCause): string => `${kind} ${what}`;

/** Weeks that follow each other for the same reasons together. */
function alike(weeks: readonly UnusualWeek[]): UnusualWeek[][] {
  const groups: UnusualWeek[][] = [];
  const key = ({ causes }: UnusualWeek): string => causes.map(say).join();
  for (const week of weeks) {
    const group = groups.at(-1),
      before = group?.at(-1);
    if (group !== undefined && before?.bucket === week.bucket - 1 && key(before) === key(week))
      group.push(week);
    else groups.push([week]);
  }
  return groups;
}

function span(group: readonly UnusualWeek[]): string {
  const first = group[0].label,
    last = group[group.length - 1].label;
  return first === last ? first : `${first} to ${last}`;
}
