import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { recoverySentence } from '../answer/recovery.js';
import type { RateJudged } from '../held/rate-held.js';
import { rowsOf } from '../lists.js';
import {
  behindByDay,
  dayOf,
  lastDayOf,
  type Pair,
  type Shipments,
  shipmentsOf,
  shippedUpTo,
} from '../programme/pairs.js';
import { type Recovery, recovery } from '../programme/recovery.js';
import { Deferred } from '../sample/deferred.js';
import type { Planned } from '../sample/planned.js';
import type { Sample } from '../sample/sample.js';
import { Counts } from '../statistics/counts.js';
import { ratio, sumOf } from '../statistics/sums.js';

export interface OutageResult {
  readonly name: string;
  readonly stations: readonly string[];
  readonly lanes: readonly string[];
  /** Local date and time in the programme's zone; `to` is where it is over. */
  readonly from: string;
  readonly to: string;
  readonly days: number;
}

/** The build against the same build without an outage, or without several together. */
export interface RecoveryResult extends Recovery {
  readonly names: readonly string[];
  /** As of an outage: where the first begins and the last is over. */
  readonly from: string;
  readonly to: string;
  readonly sentence: string;
  /** Of the single outage that puts the build furthest behind; null for the others. */
  readonly byDay: RecoveryDays | null;
}

/** At the end of each day: units behind over replications, and units shipped in the week up to it. */
export interface RecoveryDays {
  /** Local date, and days since the day on which the outage began. */
  readonly dates: readonly string[];
  readonly days: readonly number[];
  readonly behind: readonly number[];
  readonly behindP10: readonly number[];
  readonly behindP90: readonly number[];
  readonly shippedWith: readonly number[];
  readonly shippedWithout: readonly number[];
}

/** What a build ships without some outages, by replication. */
export interface WithoutOutages {
  readonly outages: readonly number[];
  readonly seen: readonly Shipments[];
}

/** Days shown before an outage, after eight in ten have caught up, and after the outage at most. */
const DAYS_BEFORE = 14,
  DAYS_AFTER = 7,
  MOST_DAYS_AFTER = 26 * 7,
  WEEK = 7;

/** Dated outages, in the order of the scenario. */
export function outages({ model, clock }: Sample): OutageResult[] {
  const { outages: columns, stations, lanes } = model;
  return columns.names.map((name, id) => ({
    name,
    stations: rowsOf(columns.stationStart, id).map((row) => stations.names[columns.station[row]]),
    lanes: rowsOf(columns.laneStart, id).map((row) => lanes.names[columns.lane[row]]),
    from: clock.dateTime(columns.from[id]) ?? '',
    to: clock.dateTime(columns.to[id]) ?? '',
    days: (columns.to[id] - columns.from[id]) / MINUTES_PER_DAY,
  }));
}

/**
 * How the build recovers from outages that were left out.
 * @param most replications of each that are set beside the build
 */
export function recoveries(
  sample: Sample,
  judged: Deferred<RateJudged>,
  without: readonly WithoutOutages[],
  most: number,
): Deferred<RecoveryResult[]> {
  const asPlanned = sample.fold<Shipments[]>([], (known, seen) => {
    if (known.length < most) known.push(shipmentsOf(seen));
    return known;
  });
  return new Deferred(() => {
    const { window } = judged.value;
    const told = without.flatMap(({ outages: ids, seen }) => {
      const pairs = asPlanned.value
          .slice(0, seen.length)
          .map((each, r): Pair => ({ with: each, without: seen[r] })),
        span = spanOf(sample, ids);
      return pairs.length === 0
        ? []
        : [{ ids, pairs, span, costs: recovery(sample, pairs, span, window, sample.level) }];
    });
    const behind = told.map(({ ids, costs }) => (ids.length === 1 ? costs.behindMost.units.mean : -Infinity)),
      furthest = behind.indexOf(Math.max(...behind));
    return told.map(({ ids, pairs, span, costs }, i) => {
      const all = {
        names: ids.map((id) => sample.model.outages.names[id]),
        from: sample.clock.dateTime(span.from) ?? '',
        to: sample.clock.dateTime(span.to) ?? '',
        ...costs,
      };
      return {
        ...all,
        sentence: recoverySentence(all),
        byDay: i === furthest && costs.changed > 0 ? byDay(sample, pairs, span, costs) : null,
      };
    });
  });
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** From the beginning of the first of some outages to the end of the last, minutes. */
const spanOf = ({ model: { outages: columns } }: Planned, ids: readonly number[]): Span => ({
  from: Math.min(...ids.map((id) => columns.from[id])),
  to: Math.max(...ids.map((id) => columns.to[id])),
});

/** From two weeks before an outage to a week after eight in ten have caught up, or as long as is known. */
function byDay(
  { clock }: Planned,
  pairs: readonly Pair[],
  { from, to }: Span,
  { caughtUpBy }: Recovery,
): RecoveryDays {
  const over = lastDayOf(to),
    behind = behindByDay(pairs, over),
    after = (caughtUpBy.at(-1)?.days ?? Infinity) + DAYS_AFTER,
    first = Math.max(0, dayOf(from) - DAYS_BEFORE),
    last = Math.min(behind[0].length - 1, over + Math.min(MOST_DAYS_AFTER, after));
  const days = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const counts = days.map((day) => {
    const all = new Counts();
    for (const each of behind) all.add(each[day]);
    return all;
  });
  const inWeek = (of: keyof Pair): number[] => {
    const shipped = pairs.map((pair) => shippedUpTo(pair[of], last + 1));
    return days.map((day) =>
      ratio(
        sumOf(shipped, (each) => each[day] - (day < WEEK ? 0 : each[day - WEEK])),
        pairs.length,
      ),
    );
  };
  return {
    dates: days.map((day) => clock.date((day + 0.5) * MINUTES_PER_DAY) ?? ''),
    days: days.map((day) => day - dayOf(from)),
    behind: counts.map((each) => each.mean),
    behindP10: counts.map((each) => each.quantile(0.1)),
    behindP90: counts.map((each) => each.quantile(0.9)),
    shippedWith: inWeek('with'),
    shippedWithout: inWeek('without'),
  };
}
