import type { Observation } from '../measure/observation.js';
import { number } from './format.js';
import { proportion } from './proportion.js';
import { leastForQuantile, quantileRanks } from './quantile-interval.js';
import type { DaysQuantile, OutageDays, OutageResult } from './results-failures.js';
import type { Sample } from './sample.js';

const DAY = 1440;
/** A daily sample may be an hour off midnight where the clocks have changed. */
const CHANGE_OF_CLOCK = 120;
/** Days shown after the shop has recovered. */
const DAYS_AFTER = 7;

/** Dated outages, and how long the shop took to work off what they left. */
export function outages(sample: Sample): OutageResult[] {
  const { model, clock, level, observations } = sample, { outages: columns, stations, lanes } = model;
  return columns.names.map((name, id) => {
    const begun = observations.filter(({ outages: { openUnits } }) => Number.isFinite(openUnits[id]));
    // One that has not recovered comes after all that have.
    const minutes = begun.map(({ outages: { recoveredAt } }) => (Number.isNaN(recoveredAt[id]) ? Infinity : recoveredAt[id] - columns.to[id])).sort((a, b) => a - b);
    const recoveryDays = [0.5, 0.8].map((p) => daysQuantile(minutes, p, level));
    return {
      name,
      stations: Array.from(columns.station.subarray(columns.stationStart[id], columns.stationStart[id + 1]), (station) => stations.names[station]),
      lanes: Array.from(columns.lane.subarray(columns.laneStart[id], columns.laneStart[id + 1]), (lane) => lanes.names[lane]),
      from: clock.dateTime(columns.from[id]) ?? '', to: clock.dateTime(columns.to[id]) ?? '',
      days: (columns.to[id] - columns.from[id]) / DAY,
      openUnits: sample.amount(({ outages: { openUnits } }) => openUnits[id]),
      recovered: begun.length === 0 ? null : proportion(minutes.filter((each) => each < Infinity).length, begun.length, level),
      recoveryDays,
      byDay: id === columns.watched && begun.length > 0 ? byDay(sample, begun, columns.to[id] + lastOf(minutes, recoveryDays[1]) + DAYS_AFTER * DAY) : null,
    };
  });
}

/** Minutes after the outage at which its picture may end: P80 of the recovery, or where that is not known the slowest; not recovered: never. */
const lastOf = (sorted: readonly number[], { days }: DaysQuantile): number => (days === null ? sorted.at(-1) ?? Infinity : days * DAY);

function byDay({ model: { outages: { from, watched, watchFrom } }, clock }: Sample, begun: readonly Observation[], until: number): OutageDays {
  const rows = Array.from(begun[0].outages.openByDay.keys(), (day) => watchFrom + day * DAY).filter((time) => time <= until).map((time, day) => {
    // When a run is finished nothing is open any more; of one that ended otherwise the rest is not known.
    const open = begun.map(({ outages: { openByDay }, outcome }) => (Number.isNaN(openByDay[day]) && outcome === 'finished' ? 0 : openByDay[day])).filter((units) => !Number.isNaN(units)).sort((a, b) => a - b);
    const rank = (p: number): number | null => (open.length === 0 ? null : open[Math.max(0, Math.ceil(open.length * p - 1e-9) - 1)]);
    return {
      date: clock.date(time + CHANGE_OF_CLOCK) ?? '', sinceOutage: (time - from[watched]) / DAY,
      mean: open.length === 0 ? null : open.reduce((a, b) => a + b, 0) / open.length, p10: rank(0.1), p90: rank(0.9),
    };
  });
  return { dates: rows.map(({ date }) => date), days: rows.map(({ sinceOutage }) => sinceOutage), mean: rows.map(({ mean }) => mean), p10: rows.map(({ p10 }) => p10), p90: rows.map(({ p90 }) => p90) };
}

/** A quantile of minutes, shortest first, with the order statistics that bound it; Infinity stands for longer than all known. */
function daysQuantile(sorted: readonly number[], p: number, level: number): DaysQuantile {
  const n = sorted.length, ranks = quantileRanks(n, p, level), none = { p, days: null, low: null, high: null };
  if (n === 0) return { ...none, why: 'the outage began in no replication' };
  if (ranks === null) return { ...none, why: `a ${number(level * 100)} % interval for P${number(p * 100)} needs ${leastForQuantile(p, level)} replications, there ${n === 1 ? 'is' : 'are'} ${n}` };
  const late = sorted.filter((time) => time === Infinity).length, notYet = `${late} of ${n} replications had not recovered when the run ended`;
  const days = (rank: number): number | null => (sorted[rank - 1] === Infinity ? null : sorted[rank - 1] / DAY);
  if (days(ranks.middle) === null) return { ...none, why: `${notYet}, and P${number(p * 100)} is among those` };
  return { p, days: days(ranks.middle), low: days(ranks.low), high: days(ranks.high), why: days(ranks.high) === null ? `${notYet}, so the interval has no end` : null };
}
