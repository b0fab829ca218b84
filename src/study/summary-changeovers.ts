import type { Stay } from '../flow/stays.js';
import type { Observation } from '../measure/observation.js';
import type { ChangeoverResult, ChangeoverStrip } from './results-changeovers.js';
import { ratio, type Sample } from './sample.js';

const WEEK_MIN = 7 * 1440;

/** Stations with changeovers, in the order of the scenario. */
export function changeovers(sample: Sample): ChangeoverResult[] {
  const { model: { stations, siteNames, options } } = sample;
  return Array.from(stations.names.keys()).filter((id) => stations.changeoverOption[id] >= 0).map((id) => {
    const { name: option, values } = options[stations.changeoverOption[id]], first = stations.changeoverStart[id];
    const pairs = values.flatMap((from, f) => values.map((to, t) => ({ from, to, pair: first + f * values.length + t })));
    const sum = (counts: Float64Array): number => pairs.reduce((total, { pair }) => total + counts[pair], 0);
    const per100 = (of: (each: Observation) => number) => sample.amount((each) => 100 * ratio(of(each), each.taken[id]));
    return {
      name: stations.names[id], site: siteNames[stations.site[id]], places: stations.places[id], option, values: [...values],
      per100Units: per100((each) => sum(each.changeovers)),
      hoursPerWeek: sample.amount((each) => ratio(sum(each.changeoverMinutes) / 60, each.minutes / WEEK_MIN)),
      pairs: pairs.filter(({ pair }) => sample.count((each) => each.changeovers[pair] > 0) > 0).map(({ from, to, pair }) => ({
        from, to, per100Units: per100((each) => each.changeovers[pair]), minutes: sample.amount((each) => ratio(each.changeoverMinutes[pair], each.changeovers[pair])),
      })),
      strip: strip(sample, id),
    };
  });
}

/** The week (programmes: from Monday) of the first replication in which most changeovers began at the station; null if nothing is known of it. */
function strip(sample: Sample, station: number): ChangeoverStrip | null {
  const [first] = sample.observations, { model, clock } = sample, stays = first!.stays[station] ?? [];
  const begin = stays[0]?.from;
  if (begin === undefined) return null;
  const weekOf = weeks(sample, begin), counts = new Map<number, number>();
  for (const stay of stays) {
    const week = weekOf(stay.changedFrom < 0 ? stay.from : stay.changeFrom);
    counts.set(week, (counts.get(week) ?? 0) + Number(stay.changedFrom >= 0));
  }
  const start = [...counts].reduce((most, each) => (each[1] > most[1] ? each : most))[0], end = start + WEEK_MIN;
  const firstPlace = model.stations.places.subarray(0, station).reduce((sum, places) => sum + places, 0);
  const hours = (minutes: number): number | null => (Number.isNaN(minutes) ? null : (minutes - start) / 60);
  const day = (i: number): string => clock.date(start + i * 1440 + 720) ?? '';
  return {
    replication: first!.replication, start: clock.dateTime(start) ?? '', days: Array.from({ length: 7 }, (_, i) => day(i)),
    stays: stays.filter(({ from, to }) => from < end && !(to <= start)).map((stay: Stay) => ({
      place: stay.place - firstPlace + 1, value: stay.value, from: hours(stay.from)!, to: hours(stay.to),
      changedFrom: stay.changedFrom < 0 ? null : stay.changedFrom, changeFrom: hours(stay.changeFrom), changeTo: hours(stay.changeTo),
    })),
  };
}

/** Start of the week of a time: ISO weeks of a programme, otherwise weeks from the first stay on. */
function weeks({ model: { programme }, clock }: Sample, begin: number): (minutes: number) => number {
  const { bucketEdges } = programme;
  // All ISO weeks are counted from the second edge, since the first week may begin within one; a change of clock moves them by an hour.
  const origin = clock.buckets.unit === 'week' && bucketEdges.length > 1 ? bucketEdges[1] : begin;
  return (minutes) => origin + WEEK_MIN * Math.floor((minutes - origin) / WEEK_MIN);
}
