import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { recoverySentence } from '../answer/recovery.js';
import { rowsOf } from '../lists.js';
import type { RateJudged } from '../programme/rate-held.js';
import {
  behindByDay,
  dayOf,
  lastDayOf,
  type Pair,
  type Recovery,
  recovery,
  type Shipments,
  shipmentsOf,
  shippedUpTo,
} from '../programme/recovery.js';
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

/** Days shown before an outage, behind the day on which eight in ten have caught up, and behind it at most. */
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

/** How the build recovers from outages, by those that were left out, as far as their replications have come. */
export function recoveries(
  sample: Sample,
  judged: Deferred<RateJudged>,
  without: readonly WithoutOutages[],
  most: number,
): Deferred<RecoveryResult[]> {
  const planned = sample.fold<Shipments[]>([], (known, seen) => {
    if (known.length < most) known.push(shipmentsOf(seen));
    return known;
  });
  return new Deferred(() => {
    const { window } = judged.value;
    const told = without.flatMap(({ outages: ids, seen }) => {
      const pairs = planned.value
        .slice(0, seen.length)
        .map((each, r): Pair => ({ with: each, without: seen[r] }));
      return pairs.length === 0 ? [] : [{ ...named(sample, ids), pairs, isSingle: ids.length === 1 }];
    });
    const found = told.map((each) => ({
      ...each,
      ...recovery(sample, each.pairs, each.span, window, sample.level),
    }));
    const single = found.filter(({ isSingle }) => isSingle),
      furthest = Math.max(...single.map(({ behindMost }) => behindMost.units.mean)),
      shown = single.find(({ behindMost }) => behindMost.units.mean === furthest);
    return found.map((each) => {
      const { pairs, span, isSingle: _, ...rest } = each;
      return {
        ...rest,
        sentence: recoverySentence(rest),
        byDay: each === shown && each.changed > 0 ? byDay(sample, pairs, span, rest) : null,
      };
    });
  });
}

/** Names of outages, and the time from the beginning of the first to the end of the last. */
function named({ model: { outages: columns }, clock }: Planned, ids: readonly number[]) {
  const span = {
    from: Math.min(...ids.map((id) => columns.from[id])),
    to: Math.max(...ids.map((id) => columns.to[id])),
  };
  return {
    names: ids.map((id) => columns.names[id]),
    from: clock.dateTime(span.from) ?? '',
    to: clock.dateTime(span.to) ?? '',
    span,
  };
}

/** From two weeks before an outage to a week after eight in ten have caught up, or as long as is known. */
function byDay(
  { clock }: Planned,
  pairs: readonly Pair[],
  { from, to }: { readonly from: number; readonly to: number },
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
