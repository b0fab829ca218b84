import type { OutageColumns } from '../../flow/model/failures.js';
import type { Model } from '../../flow/model/model.js';
import { defined, rowsOf } from '../lists.js';
import { type Shipments, shipmentsOf } from '../programme/pairs.js';
import type { Variant } from '../run/replicator.js';

/** So many outages are left out one by one, the longest first; the others together. */
const MOST_ALONE = 5;
/** Pairs for each: P80 needs 17 for a 95 % interval, and a pair varies far less than a build does. */
export const MOST_PAIRS = 20;

/** Outages, by id, that are left out together in a trial. */
export type LeftOut = readonly number[];

/** What is left out in each trial: of all outages that begin in the run. */
export function outageTrials({ outages, programme, horizon }: Model): LeftOut[] {
  const { count, from, to } = outages,
    runEnd = Math.min(programme.end, horizon),
    lasts = (id: number): number => defined(to[id]) - defined(from[id]);
  const begun = Array.from({ length: count }, (_, id) => id)
    .filter((id) => defined(from[id]) < runEnd && lasts(id) > 0)
    .sort((a, b) => lasts(b) - lasts(a));
  const others = begun.slice(MOST_ALONE);
  return [
    ...begun.slice(0, MOST_ALONE).map((id) => [id]),
    ...(others.length === 0 ? [] : [others.sort((a, b) => a - b)]),
  ];
}

/**
 * The same build without some outages. An outage draws nothing, so up to the first of them both builds are
 * the same.
 */
export const withoutVariant = (model: Model, out: LeftOut): Variant<Shipments> => ({
  key: `without outage ${out.join(', ')}`,
  model: { ...model, outages: withoutRows(model.outages, out) },
  read: shipmentsOf,
  most: MOST_PAIRS,
});

function withoutRows(outages: OutageColumns, out: LeftOut): OutageColumns {
  const kept = Array.from({ length: outages.count }, (_, id) => id).filter((id) => !out.includes(id));
  const entries = (start: Int32Array, column: Int32Array): { start: Int32Array; column: Int32Array } => {
    const rows = kept.map((id) => rowsOf(start, id).map((row) => defined(column[row])));
    let count = 0;
    return {
      start: Int32Array.from([0, ...rows.map((row) => (count += row.length))]),
      column: Int32Array.from(rows.flat()),
    };
  };
  const stations = entries(outages.stationStart, outages.station),
    lanes = entries(outages.laneStart, outages.lane),
    times = (column: Float64Array): Float64Array => column.filter((_, id) => kept.includes(id));
  return {
    count: kept.length,
    names: outages.names.filter((_, id) => kept.includes(id)),
    from: times(outages.from),
    to: times(outages.to),
    stationStart: stations.start,
    station: stations.column,
    laneStart: lanes.start,
    lane: lanes.column,
  };
}
