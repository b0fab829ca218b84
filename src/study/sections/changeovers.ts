import type { PlaceVisit } from '../../flow/accounts/changeover-log.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { named } from '../lists.js';
import { Deferred } from '../sample/deferred.js';
import { occurring, type Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sum, sumOf } from '../statistics/sums.js';

/** Changeovers at a station, by the option that it is set up for, or the setting. */
export interface ChangeoverResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  /** `setting` where it is that of the steps. */
  readonly option: string;
  readonly values: readonly string[];
  /** Changeovers per 100 units that took a place, and their work in hours per week of the calendar. */
  readonly per100Units: Estimate;
  readonly hoursPerWeek: Estimate;
  /** Pairs of values that occurred: how often, and the mean work of one, minutes. */
  readonly pairs: readonly {
    readonly from: string;
    readonly to: string;
    readonly per100Units: Estimate;
    readonly minutes: Estimate;
  }[];
  /** null where nothing is known of the first replication. */
  readonly strip: ChangeoverStrip | null;
}

/** A week of one replication, or less: who stood on each place. Hours since `start`; below 0 before it. */
export interface ChangeoverStrip {
  readonly replication: number;
  /** Local date and time at which it begins, its length, and its days. */
  readonly start: string;
  readonly hours: number;
  readonly days: readonly string[];
  readonly stays: readonly StripStay[];
}
export interface StripStay {
  /** From 1. */
  readonly place: number;
  /** Index into `values`; so is `changedFrom`, null without changeover. */
  readonly value: number;
  readonly from: number;
  /** null: still there at the end of the run. */
  readonly to: number | null;
  readonly changedFrom: number | null;
  readonly changeFrom: number | null;
  readonly changeTo: number | null;
  /** What of it was worked, where that is not all: a break, the time off shift, a failure; else left out. */
  readonly changePieces?: readonly (readonly [from: number, to: number])[];
}

const WEEK_MIN = 7 * MINUTES_PER_DAY;
/** Units on one place in a strip, at most. */
const MOST_UNITS = 160;

/**
 * Stations with changeovers, the one with the highest utilisation first. All strips are of one week: the
 * busiest of the first station.
 */
export function changeovers(sample: Sample): Deferred<ChangeoverResult[]> {
  const { stations, options } = sample.model;
  const all = Array.from(stations.names.keys())
    .filter((id) => stations.changeoverValues[id].length > 0)
    .map((id) => {
      const values = stations.changeoverValues[id],
        option = stations.changeoverOption[id] < 0 ? 'setting' : options[stations.changeoverOption[id]].name,
        first = stations.changeoverStart[id];
      const pairs = values.flatMap((from, f) =>
        values.map((to, t) => ({ from, to, pair: first + f * values.length + t })),
      );
      const inAll = (counts: Float64Array): number => sumOf(pairs, ({ pair }) => counts[pair]);
      const per100 = (of: (each: Observation) => number) =>
        sample.amount((each) => 100 * ratio(of(each), each.taken[id]));
      const seen = pairs.map(({ from, to, pair }) => ({
        times: sample.count((each) => each.changeovers[pair] > 0),
        row: {
          from,
          to,
          per100Units: per100((each) => each.changeovers[pair]),
          minutes: sample.amount((each) => ratio(each.changeoverMinutes[pair], each.changeovers[pair])),
        },
      }));
      return {
        id,
        used: sample.share(({ utilisation }) => utilisation[id]),
        result: {
          ...named(sample.model, 'stations', id),
          places: stations.places[id],
          option,
          values: [...values],
          per100Units: per100((each) => inAll(each.changeovers)),
          hoursPerWeek: sample.amount((each) =>
            ratio(inAll(each.changeoverMinutes) / 60, each.minutes / WEEK_MIN),
          ),
          pairs: occurring<ChangeoverResult['pairs'][number]>(seen),
        },
      };
    });
  return new Deferred<ChangeoverResult[]>(() => {
    const sorted = all
      .map((each) => ({ ...each, mean: each.used.value.mean }))
      .sort((a, b) => b.mean - a.mean);
    const window = sorted.length === 0 ? null : busiestWeek(sample, sorted[0].id);
    return sorted.map(({ id, result }) => ({
      ...result,
      strip: window === null ? null : strip(sample, id, window),
    }));
  });
}

/** Part of the first replication: times in minutes, and the days in it. */
interface ShownTime {
  readonly start: number;
  readonly end: number;
  readonly days: number;
}

/**
 * The week in which most changeovers began at a station, of those kept; the earliest of equals. Weeks are
 * those of the series, or run from the first stay where there are none. A week with more units than can be
 * told apart is cut short.
 */
function busiestWeek({ model, clock, first }: Sample, station: number): ShownTime | null {
  const stays = first.stays[station] ?? [];
  if (stays.length === 0) return null;
  const begin = stays[0].from;
  const { bucketEdges } = model.programme,
    isWeeks = clock.buckets.unit === 'week';
  const weekOf = (minutes: number): number =>
    isWeeks ? bucketEdges.findLastIndex((edge) => edge <= minutes) : Math.floor((minutes - begin) / WEEK_MIN);
  const counts = new Map<number, { units: number; changes: number }>();
  for (const { from, changedFrom } of stays) {
    const count = counts.get(weekOf(from)) ?? { units: 0, changes: 0 };
    counts.set(weekOf(from), { units: count.units + 1, changes: count.changes + Number(changedFrom >= 0) });
  }
  const [week, { units }] = [...counts].reduce((most, each) =>
    each[1].changes > most[1].changes ? each : most,
  );
  const start = isWeeks ? bucketEdges[week] : begin + week * WEEK_MIN,
    length = isWeeks ? (bucketEdges[week + 1] ?? first.endedAt) - start : WEEK_MIN;
  const whole = Math.ceil(length / MINUTES_PER_DAY),
    days = Math.max(
      1,
      Math.min(whole, Math.floor((whole * MOST_UNITS * model.stations.places[station]) / units)),
    );
  return { start, end: days < whole ? start + days * MINUTES_PER_DAY : start + length, days };
}

function strip(
  { model, clock, first }: Sample,
  station: number,
  { start, end, days }: ShownTime,
): ChangeoverStrip {
  const firstPlace = sum(model.stations.places.subarray(0, station));
  const hours = (minutes: number): number | null => (Number.isNaN(minutes) ? null : (minutes - start) / 60);
  return {
    replication: first.replication,
    start: clock.dateTime(start) ?? '',
    hours: (end - start) / 60,
    days: Array.from(
      { length: days },
      (_, i) => clock.date(Math.min(end - 1, start + (i + 0.5) * MINUTES_PER_DAY)) ?? '',
    ),
    stays: (first.stays[station] ?? [])
      .filter(({ from, to }) => from < end && !(to <= start))
      .map((stay) => ({
        place: stay.place - firstPlace + 1,
        value: stay.value,
        from: hours(stay.from)!,
        to: hours(stay.to),
        changedFrom: stay.changedFrom < 0 ? null : stay.changedFrom,
        changeFrom: hours(stay.changeFrom),
        changeTo: hours(stay.changeTo),
        ...piecesOf(stay, hours),
      })),
  };
}

/** None where it was worked from beginning to end, or has not ended. */
function piecesOf(
  { pieces, changeFrom, changeTo }: PlaceVisit,
  hours: (minutes: number) => number | null,
): Pick<StripStay, 'changePieces'> {
  const [first] = pieces;
  return pieces.length === 0 ||
    Number.isNaN(changeTo) ||
    (pieces.length === 1 && first[0] === changeFrom && first[1] === changeTo)
    ? {}
    : { changePieces: pieces.map(([from, to]) => [hours(from)!, hours(to)!] as const) };
}
