import { endOf, startOf, type WorkingDay } from '../../scenario/calendar/days.js';
import type { ReleaseDay } from '../../scenario/programme/release.js';
import { minutesBetween, type Planned } from '../sample/planned.js';
import { sumOf } from '../statistics/sums.js';

/** Buckets `first` to `last` over which a rate is judged; dates of their first and last day. */
export interface Window {
  readonly first: number;
  readonly last: number;
  readonly from: string;
  readonly to: string;
  readonly workingDays: number;
  /** Weeks (or parts) with a working day. */
  readonly weeks: number;
  readonly asked: number;
}

/**
 * The whole weeks (or parts) in which a rate is asked on every working day, from the first that starts at
 * least one mean lead time after the rate was first asked: before, the shop still fills and ships what
 * entered at another rate. It ends with the last whole week before releases at the rate end. Where the plan
 * comes to the rate more than once, the longest such time counts, the first of equal ones. null: there is no
 * such week.
 * @param lead mean lead time, minutes; NaN if nothing was shipped
 * @param from no week that begins sooner counts, minutes since the start
 */
export function judgedWindow(plan: Planned, perDay: number, lead: number, from = -Infinity): Window | null {
  const {
      model: { programme, horizon },
      clock,
    } = plan,
    { buckets } = clock;
  if (Number.isNaN(lead)) return null;
  const days = markedDays(plan, perDay),
    { bucketEdges: edges } = programme,
    end = Math.min(programme.end, horizon);
  let begun = 0;
  const fits = buckets.labels.map((_, b): boolean | null => {
    while (begun < days.length && endOf(days[begun]) <= edges[b]) begun++;
    const inside: typeof days = [];
    for (let d = begun; d < days.length && startOf(days[d]) < edges[b + 1]; d++)
      if (minutesBetween(days[d], edges[b], edges[b + 1]) > 0) inside.push(days[d]);
    if (inside.length === 0) return null;
    return (
      inside.every(({ since }) => since + lead <= edges[b]) &&
      edges[b] >= Math.max(programme.warmUp, from) &&
      edges[b + 1] <= end
    );
  });
  let best: Window | null = null;
  for (let first = 0; first < fits.length; first++) {
    if (fits[first] !== true) continue;
    let last = first,
      next = first + 1;
    // A week of holidays does not end the time.
    for (; next < fits.length && fits[next] !== false; next++) if (fits[next] === true) last = next;
    const inside = Array.from({ length: last - first + 1 }, (_, i) => first + i);
    const workingDays = sumOf(inside, (b) => buckets.workingDays[b]);
    const asked = sumOf(inside, (b) => (buckets.asked[b] ?? 0) * buckets.workingDays[b]);
    if (best === null || workingDays > best.workingDays)
      best = {
        first,
        last,
        workingDays,
        weeks: inside.filter((b) => buckets.workingDays[b] > 0).length,
        asked,
        from: clock.date(edges[first]) ?? '',
        to: clock.date(edges[last + 1] - 1) ?? '',
      };
    first = last;
  }
  return best;
}

/** From its first minute to the end of its last, minutes since the start. */
export const stretchOf = (
  { model: { programme } }: Planned,
  { first, last }: Pick<Window, 'first' | 'last'>,
): { readonly from: number; readonly to: number } => ({
  from: programme.bucketEdges[first],
  to: programme.bucketEdges[last + 1],
});

/**
 * Working days with the time since which the rate has been asked without a break; Infinity on days on which
 * it is not.
 */
function markedDays(
  { calendar: { workingDays, releaseDays }, scenario: { programme } }: Planned,
  perDay: number,
): (WorkingDay & { since: number })[] {
  const releases = new Map(releaseDays.map((day) => [day.day, day]));
  // On the last day of a programme the rest of its quantity may be less than the rate.
  const isWhole = (day: ReleaseDay | undefined): boolean =>
    day !== undefined &&
    day.usual === perDay &&
    day.before + day.rate <= (programme.quantity ?? Infinity) + 1e-6;
  let since = Infinity;
  return workingDays.map((day) => {
    since = isWhole(releases.get(day.day)) ? Math.min(since, day.windows[0].start) : Infinity;
    return { ...day, since };
  });
}
