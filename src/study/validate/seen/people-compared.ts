import type { Model } from '../../../flow/model/model.js';
import { isoDate } from '../../../scenario/calendar/date.js';
import { mean, ratio, sum } from '../../statistics/sums.js';
import type { Frame } from './frame.js';
import type { Measure } from './measures.js';
import { firstHalf, mostAtOnce, shareAbove } from './people.js';
import type { LogWatch } from './watch.js';

/** How long how many people of a crew were at work at once: what it takes to compare logs. */
export interface PeopleSeen {
  readonly crew: number;
  /** Shift and part of the period; '' where there is one shift, and of the whole. */
  readonly what: string;
  readonly most: number;
  readonly minutes: readonly number[];
  /** Mean minutes from arrival to start at the steps of the crew; NaN where no arrival is told. */
  readonly waiting: number;
}

export function peopleOf(frame: Frame, { people, stays }: LogWatch): PeopleSeen[] {
  const { resources } = frame.model,
    half = firstHalf(frame),
    since = half === null ? null : `${FROM}${isoDate(frame.fromDay + half)} on`;
  return people.crews.flatMap(({ whole, later }, crew) => {
    const waits = people.stepsOf(crew).flatMap((step) => stays.waiting[step] ?? []),
      waiting = ratio(
        sum(waits.map((each) => (each.n === 0 ? 0 : each.n * each.mean))),
        sum(waits.map(({ n }) => n)),
      );
    const hasShifts = (resources.shifts[crew]?.position.length ?? 0) > 0;
    const seen = (minutes: readonly number[][], part: string | null): PeopleSeen[] =>
      part === null
        ? []
        : minutes.map((booked, shift) => {
            const filled = Array.from(booked, (each: number | undefined) => each ?? 0),
              what = [hasShifts ? `shift ${shift + 1}` : '', part].filter((text) => text !== '').join(', ');
            return { crew, what, most: mostAtOnce(filled), minutes: filled, waiting };
          });
    return [...seen(whole, ''), ...seen(later, since)];
  });
}

const FROM = 'from ',
  /** Root of a share of the time. */
  SLIGHT = Math.sqrt(0.002);

/** What is said of a part of the period, without the part; null: it is of the whole. */
export function wholeOf(what: string): string | null {
  const at = what.lastIndexOf(FROM);
  return at < 0 ? null : what.slice(0, at).replace(/, $/, '');
}

/** Most people at once in the real log and in any simulated one. */
export interface MostPeople {
  readonly real: number;
  readonly simulated: number;
  /**
   * There were no more of them: so many were at work for as long as so many or more are in the model, and
   * units waited longer for them. Where there was less to do either is shorter.
   */
  readonly isCut: boolean;
}

/**
 * The same as measures: how long more people were at work than ever at once in the real log, or, where it has
 * more of them than any simulated one and than the crew has, than in these.
 */
export function peopleMeasures(
  model: Model,
  real: readonly PeopleSeen[],
  simulated: readonly (readonly PeopleSeen[])[],
): {
  readonly real: Measure[];
  readonly simulated: Measure[][];
  readonly most: ReadonlyMap<Measure, MostPeople>;
} {
  const most = real.map(({ most: own, minutes, waiting }, i): MostPeople => {
    const others = simulated.flatMap((all) => all[i] ?? []),
      shares = others.map((each) => shareAbove(each.minutes, own - 1));
    return {
      real: own,
      simulated: others.reduce((top, each) => Math.max(top, each.most), 0),
      isCut:
        shares.length > 0 &&
        shareAbove(minutes, own - 1) >= mean(shares) &&
        !(waiting <= mean(others.map((each) => each.waiting))),
    };
  });
  const measured = (all: readonly PeopleSeen[]): Measure[] =>
    all.map(({ crew, what, minutes }, i) => {
      const { real: own, simulated: others } = most[i] ?? { real: 0, simulated: 0 },
        // As many as the crew has may meet by luck, though they did in no simulated log.
        level = own <= headcount(model, crew) ? own : Math.min(own, others);
      return {
        topic: 'people',
        of: model.resources.names[crew] ?? '',
        what,
        value: shareAbove(minutes, level),
        n: 0,
        // Where one shift hands over to the next, people of both may be at work for a moment.
        ...(own > others ? { least: SLIGHT } : {}),
      };
    });
  const measures = measured(real);
  return {
    real: measures,
    simulated: simulated.map(measured),
    most: new Map(most.flatMap((each, i) => (measures[i] === undefined ? [] : [[measures[i], each]]))),
  };
}

/** People of a crew at most, in any shift and at any date. */
const headcount = ({ resources, later }: Model, crew: number): number =>
  [
    resources,
    ...later.flatMap(({ parts }) => (parts.resources === undefined ? [] : [parts.resources])),
  ].reduce(
    (most, { amount, shifts }) =>
      Math.max(most, amount[crew] ?? 0, ...Array.from(shifts[crew]?.people ?? [], Number)),
    0,
  );
