import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { isoDate } from '../../../scenario/calendar/date.js';
import { ratio } from '../../statistics/sums.js';
import { type Frame, placeNames } from './frame.js';
import { WEEK } from './line.js';
import { isByTheClock, isDone } from './stays.js';
import type { LogWatch } from './watch.js';

/** What the line brings about, and what a planner puts in. */
export type Topic = 'rate' | 'lead time' | 'units inside' | 'quality' | 'minutes' | 'finds' | 'people';

/** One estimate of one log. */
export interface Measure {
  readonly topic: Topic;
  /** Step, site, inspection or crew. */
  readonly of: string;
  /** What of it: a kind of defect, a shift. */
  readonly what: string;
  /** NaN where the log has none. */
  readonly value: number;
  /** Values or trials behind it; 0 where it is no mean and no share. */
  readonly n: number;
  /** Standard deviation of single values, of a mean. */
  readonly sd?: number;
  /** Below it no difference counts, on the scale on which it is judged: of a count, one unit. */
  readonly least?: number;
}

/** What is told of a kind of defect at an inspection. */
export const OF_THOSE_THERE = 'found, of those that it or a later one finds',
  THAT_COMES = 'that comes to it, as found by it or later',
  LEFT_TO_IT = 'found in a visit, left by earlier ones',
  IN_A_VISIT = 'found in a visit';
/** Of a lane: it holds the wait for a fuller truck, which is no input. */
export const ON_THE_ROAD = 'minutes from loading to unloading';
const BY_THE_CLOCK = 'minutes by the clock';

export const isInput = (topic: Topic): boolean =>
  topic === 'minutes' || topic === 'finds' || topic === 'people';

/** Everything that is compared, in the same order for each log of a model. */
export function measuresOf(frame: Frame, { line, finds, stays }: LogWatch): Measure[] {
  const { model, workingDays } = frame,
    { steps, routes } = model,
    places = placeNames(model),
    wip = line.wip();
  const found: Measure[] = [
    {
      topic: 'rate',
      of: 'whole line',
      what: 'units shipped a working day',
      value: line.shipped / workingDays,
      n: 0,
      least: 1 / workingDays,
    },
    {
      topic: 'lead time',
      of: 'whole line',
      what: 'mean days',
      value: line.lead.n === 0 ? NaN : line.lead.mean / MINUTES_PER_DAY,
      n: line.lead.n,
    },
    // Of builds fed the same entries: correlated inspection (Law 2015, sec. 5.6.1; from memory).
    ...line.weeks().map(
      (units, week): Measure => ({
        topic: 'rate',
        of: 'whole line',
        what: `units shipped in the week from ${isoDate(frame.fromDay + week * WEEK)}`,
        value: units,
        n: 0,
        least: 1,
      }),
    ),
    ...places.map(
      (of, place): Measure => ({
        topic: 'units inside',
        of,
        what: place < model.siteNames.length ? 'mean units' : 'mean units on the lane',
        value: wip[place] ?? NaN,
        n: 0,
      }),
    ),
  ];
  finds.inspections.forEach((seen, step) => {
    if (seen === null) return;
    const of = steps.names[step] ?? '';
    const share = (what: string, units: number, n: number): Measure => ({
      topic: 'quality',
      of,
      what,
      value: ratio(units, n),
      n,
    });
    found.push(share('right first time', seen.right, seen.first));
    if (!Number.isNaN(seen.sentBack)) found.push(share('sent back', seen.sentBack, seen.visits));
  });
  // Steps of ways back and holds do what other steps leave to them; nothing is done at banks and by groups.
  const last = routes.firstStep[routes.count] ?? steps.count;
  stays.minutes.slice(0, last).forEach(({ n, mean, variance }, step) => {
    if (!isDone(model, step)) return;
    const isLane = (steps.lane[step] ?? -1) >= 0;
    found.push({
      topic: 'minutes',
      of: steps.names[step] ?? '',
      what: isLane ? ON_THE_ROAD : isByTheClock(model, step) ? BY_THE_CLOCK : 'working minutes',
      value: n === 0 ? NaN : mean,
      n,
      sd: Math.sqrt(variance),
    });
  });
  finds.asked.forEach((look, i) => {
    const { found: here, missed } = finds.looks[i] ?? { found: 0, missed: 0 },
      visits = finds.inspections[look.step]?.visits ?? 0,
      of = steps.names[look.step] ?? '';
    const share = (what: string, count: number, n: number): Measure => ({
      topic: 'finds',
      of,
      what: `${look.kind} ${what}`,
      // Several of a kind may be found in one visit.
      value: ratio(Math.min(count, n), n),
      n,
    });
    if (!look.isLast) found.push(share(OF_THOSE_THERE, here, here + missed));
    if (look.isFirst && !look.isLast) found.push(share(THAT_COMES, here + missed, visits));
    if (look.isLast) found.push(share(look.isFirst ? IN_A_VISIT : LEFT_TO_IT, here, visits));
  });
  return found;
}
