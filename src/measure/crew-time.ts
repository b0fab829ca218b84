import type { Model } from '../flow/model/model.js';
import type { Run } from '../flow/run.js';

/**
 * People's time on shift in one replication, from the start of observation to its end; person-minutes, by
 * crew.
 */
export interface CrewTime {
  /** Of people who were there, in usual hours and in overtime: what is paid. */
  readonly usual: Float64Array;
  readonly overtime: Float64Array;
  /** The same of one person who is there on every shift. */
  readonly ofOne: { readonly usual: Float64Array; readonly overtime: Float64Array };
  /** By crew: minutes on shift of its calendar by bucket, overtime included; the overtime of them. */
  readonly hours: readonly { readonly onShift: Float64Array; readonly overtime: Float64Array }[];
  /**
   * By crew, of those whose number changes by shift or on a date; null: all are there. Person-minutes by
   * bucket, overtime included; the overtime of them.
   */
  readonly people: readonly ({ readonly present: Float64Array; readonly overtime: Float64Array } | null)[];
}

/** Reads the calendars of the run as they were worked, with the people that were there in each shift. */
export function crewTime(run: Run): CrewTime {
  const {
      resources,
      programme: { bucketEdges },
    } = run.model,
    usual = new Float64Array(resources.crews),
    overtime = new Float64Array(resources.crews),
    ofOne = { usual: new Float64Array(resources.crews), overtime: new Float64Array(resources.crews) },
    byBucket = (): Float64Array => new Float64Array(Math.max(0, bucketEdges.length - 1));
  const rows = Array.from({ length: resources.crews }, (_, crew) => {
    const shifts = run.crewShifts.find((each) => each.crew === run.shop.resources[crew]),
      hours = { onShift: byBucket(), overtime: byBucket() },
      people =
        shifts === undefined && isSteady(run.model, crew)
          ? null
          : { present: byBucket(), overtime: byBucket() };
    let shift = 0;
    eachWindow(run, resources.calendar[crew], (window, from, minutes, isOvertime, bucket) => {
      if (shifts !== undefined) while (shifts.columns.firstWindow[shift + 1] <= window) shift++;
      const there =
        (shifts === undefined ? headcount(run.model, crew, from) : shifts.presentIn(shift)) * minutes;
      (isOvertime ? overtime : usual)[crew] += there;
      (isOvertime ? ofOne.overtime : ofOne.usual)[crew] += minutes;
      if (bucket < 0) return;
      hours.onShift[bucket] += minutes;
      if (isOvertime) hours.overtime[bucket] += minutes;
      if (people === null) return;
      people.present[bucket] += there;
      if (isOvertime) people.overtime[bucket] += there;
    });
    return { hours, people };
  });
  return {
    usual,
    overtime,
    ofOne,
    hours: rows.map(({ hours }) => hours),
    people: rows.map(({ people }) => people),
  };
}

/** Whether nobody comes or goes on a date. */
const isSteady = ({ resources, later }: Model, crew: number): boolean =>
  later.every(({ parts }) => (parts.resources ?? resources).amount[crew] === resources.amount[crew]);

/** People of a crew that is the same on every shift, at a time. */
function headcount(model: Model, crew: number, at: number): number {
  const stage = model.later.find(({ until }) => at < until);
  return (stage?.parts.resources ?? model.resources).amount[crew];
}

/**
 * Windows of a calendar (-1: always) that were observed, cut at the edges of buckets and at the dates of
 * changes; bucket -1: none.
 */
function eachWindow(
  run: Run,
  calendar: number,
  tell: (window: number, from: number, minutes: number, isOvertime: boolean, bucket: number) => void,
): void {
  const {
      model: {
        calendars,
        later,
        programme: { bucketEdges: edges },
      },
      memory,
      observedFrom,
      now,
    } = run,
    buckets = edges.length - 1;
  const change = (after: number): number => later.find(({ until }) => after < until)?.until ?? Infinity;
  const start = calendar < 0 ? [observedFrom] : memory.calendars[calendar].start,
    end = calendar < 0 ? [now] : memory.calendars[calendar].end;
  for (let w = 0, bucket = 0; w < start.length && start[w] < now; w++) {
    const to = Math.min(end[w], now),
      isOvertime = calendar >= 0 && calendars[calendar].overtime[w] === 1;
    for (let from = Math.max(start[w], observedFrom); from < to; ) {
      while (bucket < buckets && edges[bucket + 1] <= from) bucket++;
      const isInside = bucket < buckets && edges[bucket] <= from,
        until = isInside
          ? Math.min(to, edges[bucket + 1])
          : bucket < buckets
            ? Math.min(to, edges[bucket])
            : to,
        stop = Math.min(until, change(from));
      tell(w, from, stop - from, isOvertime, isInside ? bucket : -1);
      from = stop;
    }
  }
}

/** Minutes of overtime worked by rule * buckets + bucket. */
export function ruledMinutes(run: Run): Float64Array {
  const {
      model: {
        overtime,
        calendars,
        programme: { bucketEdges },
      },
      memory,
      observedFrom,
      now,
    } = run,
    buckets = Math.max(0, bucketEdges.length - 1);
  const worked = new Float64Array(overtime.length * buckets);
  overtime.forEach(({ calendar }, rule) => {
    const { rules } = calendars[calendar],
      { start, end } = memory.calendars[calendar];
    for (let w = 0, b = 0; w < start.length && start[w] < now; w++) {
      while (b < buckets && bucketEdges[b + 1] <= start[w]) b++;
      if ((rules[w] & (1 << rule)) !== 0 && b < buckets)
        worked[rule * buckets + b] += Math.max(0, Math.min(end[w], now) - Math.max(start[w], observedFrom));
    }
  });
  return worked;
}
