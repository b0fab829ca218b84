import { HOLD_NONE } from '../../../flow/model/quality.js';
import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { ratio } from '../../statistics/sums.js';
import { type Frame, placeNames } from './frame.js';
import { mostAtOnce, shareAbove } from './people.js';
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
}

/** What is told of a kind of defect at an inspection. */
export const OF_THOSE_THERE = 'found, of those that it or a later one finds',
  THAT_COMES = 'that comes to it, as found by it or later',
  LEFT_TO_IT = 'found in a visit, left by earlier ones',
  IN_A_VISIT = 'found in a visit';

export const isInput = (topic: Topic): boolean =>
  topic === 'minutes' || topic === 'finds' || topic === 'people';

/** Everything that is compared, in the same order for each log of a model. */
export function measuresOf(frame: Frame, { line, finds, stays }: LogWatch): Measure[] {
  const { model, workingDays } = frame,
    { steps, routes, quality } = model,
    places = placeNames(model),
    wip = line.wip();
  const found: Measure[] = [
    {
      topic: 'rate',
      of: 'whole line',
      what: 'units shipped a working day',
      value: line.shipped / workingDays,
      n: 0,
    },
    {
      topic: 'lead time',
      of: 'whole line',
      what: 'mean days',
      value: line.lead.n === 0 ? NaN : line.lead.mean / MINUTES_PER_DAY,
      n: line.lead.n,
    },
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
    found.push(
      { topic: 'quality', of, what: 'right first time', value: ratio(seen.right, seen.first), n: seen.first },
      { topic: 'quality', of, what: 'sent back', value: ratio(seen.sentBack, seen.visits), n: seen.visits },
    );
  });
  // Steps of ways back and holds do what other steps leave to them.
  const last = routes.firstStep[routes.count] ?? steps.count;
  stays.minutes.slice(0, last).forEach(({ n, mean, variance }, step) => {
    if ((quality.hold[step] ?? HOLD_NONE) !== HOLD_NONE) return;
    const isLane = (steps.lane[step] ?? -1) >= 0;
    found.push({
      topic: 'minutes',
      of: steps.names[step] ?? '',
      what: isLane ? 'minutes from loading to unloading' : 'working minutes',
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

/** Most people at once by crew and shift, and how long how many: what it takes to compare logs. */
export interface PeopleSeen {
  readonly crew: number;
  readonly shift: number;
  readonly most: number;
  readonly minutes: readonly number[];
}

export const peopleOf = ({ people }: LogWatch): PeopleSeen[] =>
  people.crews.flatMap(({ minutes }, crew) =>
    minutes.map((booked, shift) => {
      const filled = Array.from(booked, (each: number | undefined) => each ?? 0);
      return { crew, shift, most: mostAtOnce(filled), minutes: filled };
    }),
  );

/**
 * The same as measures: how long more people were at work than ever at once in the real log, or, where it has
 * more of them than any simulated one, than in these.
 */
export function peopleMeasures(
  { model: { resources } }: Pick<Frame, 'model'>,
  real: readonly PeopleSeen[],
  simulated: readonly (readonly PeopleSeen[])[],
): { readonly real: Measure[]; readonly simulated: Measure[][]; readonly most: number[] } {
  const most = real.map((_, i) => simulated.reduce((top, each) => Math.max(top, each[i]?.most ?? 0), 0)),
    levels = real.map((each, i) => Math.min(each.most, most[i] ?? 0));
  const measured = (all: readonly PeopleSeen[]): Measure[] =>
    all.map(({ crew, shift, minutes }, i) => ({
      topic: 'people',
      of: resources.names[crew] ?? '',
      what: (resources.shifts[crew]?.position.length ?? 0) > 0 ? `shift ${shift + 1}` : '',
      value: shareAbove(minutes, levels[i] ?? 0),
      n: 0,
    }));
  return { real: measured(real), simulated: simulated.map(measured), most };
}
