import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { count, exact } from '../format.js';
import { rowsOf } from '../lists.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import { knownQuantile } from '../sample/known-quantile.js';
import type { Folded, Sample } from '../sample/sample.js';
import { Counts } from '../statistics/counts.js';
import type { Estimate } from '../statistics/estimate.js';
import { type Proportion, proportion } from '../statistics/proportion.js';

/**
 * A duration over replications with its order-statistic interval; null where it is not known, `why` then says
 * so.
 */
export interface DaysQuantile {
  readonly p: number;
  readonly days: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly why: string | null;
}

export interface OutageResult {
  readonly name: string;
  readonly stations: readonly string[];
  readonly lanes: readonly string[];
  /** Local date and time in the programme's zone; `to` is where it is over. */
  readonly from: string;
  readonly to: string;
  readonly days: number;
  /** Units open (released and not yet out) when it began. */
  readonly openUnits: Estimate;
  /**
   * Replications in which no more were open again before the run ended, of those in which it began; null if
   * it began in none.
   */
  readonly recovered: Proportion | null;
  /** From its end until no more units were open than when it began; P50 and P80, days of 24 h. */
  readonly recoveryDays: readonly DaysQuantile[];
  /** Of the longest outage: open units at the start of each day, over replications; null for the others. */
  readonly byDay: OutageDays | null;
}
export interface OutageDays {
  /** Local date, and days since the outage began. */
  readonly dates: readonly string[];
  readonly days: readonly number[];
  /** Null on a day that no replication came to. */
  readonly mean: readonly (number | null)[];
  readonly p10: readonly (number | null)[];
  readonly p90: readonly (number | null)[];
}

/** A daily sample may be an hour off midnight where the clocks have changed. */
const CHANGE_OF_CLOCK = 120;
/** Days shown after the shop has recovered. */
const DAYS_AFTER = 7;

/** Dated outages, and how long the shop took to work off what they left. */
export function outages(sample: Sample): Pending<OutageResult[]> {
  const { model, clock, level } = sample,
    { outages: columns, stations, lanes } = model;
  return columns.names.map((name, id): Pending<OutageResult> => {
    const hasBegun = ({ outages: { openUnits } }: Observation): boolean => Number.isFinite(openUnits[id]);
    // One that has not recovered comes after all that have.
    const recovery = sample.counts((each) => {
      const at = each.outages.recoveredAt[id];
      return !hasBegun(each) ? NaN : Number.isNaN(at) ? Infinity : at - columns.to[id];
    });
    const days = (p: number): DaysQuantile => daysQuantile(recovery.value, p, level),
      open = id === columns.watched ? openByDay(sample, hasBegun) : null;
    return {
      name,
      stations: rowsOf(columns.stationStart, id).map((row) => stations.names[columns.station[row]]),
      lanes: rowsOf(columns.laneStart, id).map((row) => lanes.names[columns.lane[row]]),
      from: clock.dateTime(columns.from[id]) ?? '',
      to: clock.dateTime(columns.to[id]) ?? '',
      days: (columns.to[id] - columns.from[id]) / MINUTES_PER_DAY,
      openUnits: sample.amount(({ outages: { openUnits } }) => openUnits[id]),
      recovered: new Deferred(() => {
        const { value } = recovery;
        return value.n === 0 ? null : proportion(value.n - value.of(Infinity), value.n, level);
      }),
      recoveryDays: new Deferred(() => [days(0.5), days(0.8)]),
      byDay: new Deferred(() =>
        open === null || recovery.value.n === 0
          ? null
          : byDay(
              sample,
              open.value,
              columns.to[id] + lastOf(recovery.value, days(0.8)) + DAYS_AFTER * MINUTES_PER_DAY,
            ),
      ),
    };
  });
}

/**
 * Minutes after the outage at which its picture may end: P80 of the recovery, or where that is not known the
 * slowest; not recovered: never.
 */
const lastOf = (recovery: Counts, { days }: DaysQuantile): number =>
  days === null ? recovery.ranked(recovery.n) : days * MINUTES_PER_DAY;

/** Open units by day of the watched outage, of the replications in which it began. */
function openByDay(sample: Sample, hasBegun: (each: Observation) => boolean): Folded<Counts[]> {
  return sample.fold<Counts[]>([], (known, each) => {
    if (hasBegun(each))
      each.outages.openByDay.forEach((units, day) => {
        const counts = (known[day] ??= new Counts());
        // When a run is finished nothing is open any more; of one that ended otherwise the rest is not known.
        if (!Number.isNaN(units)) counts.add(units);
        else if (each.outcome === 'finished') counts.add(0);
      });
    return known;
  });
}

function byDay(
  {
    model: {
      outages: { from, watched, watchFrom },
    },
    clock,
  }: Sample,
  open: readonly Counts[],
  until: number,
): OutageDays {
  const rows = open
    .map((counts, day) => ({ counts, time: watchFrom + day * MINUTES_PER_DAY }))
    .filter(({ time }) => time <= until);
  const each = <T>(of: (counts: Counts) => T): (T | null)[] =>
    rows.map(({ counts }) => (counts.n === 0 ? null : of(counts)));
  return {
    dates: rows.map(({ time }) => clock.date(time + CHANGE_OF_CLOCK) ?? ''),
    days: rows.map(({ time }) => (time - from[watched]) / MINUTES_PER_DAY),
    mean: each((counts) => counts.mean),
    p10: each((counts) => counts.quantile(0.1)),
    p90: each((counts) => counts.quantile(0.9)),
  };
}

/** A quantile of minutes, as days; Infinity stands for longer than all known. */
function daysQuantile(minutes: Counts, p: number, level: number): DaysQuantile {
  const { middle: days, ...bounds } = knownQuantile(
    minutes,
    p,
    level,
    (each) => each / MINUTES_PER_DAY,
    'the outage began in no replication',
    (late) => `${exact(late)} of ${count(minutes.n, 'replication')} had not recovered when the run ended`,
  );
  return { p, days, ...bounds };
}
