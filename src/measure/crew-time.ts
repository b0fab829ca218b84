import type { Run } from '../flow/run.js';

/** People's time on shift in one replication, from the start of observation to its end; person-minutes, by crew. */
export interface CrewTime {
  /** Of people who were there, in usual hours and in overtime: what is paid. */
  readonly usual: Float64Array;
  readonly overtime: Float64Array;
  /** By crew * buckets + bucket: of people there, overtime included; the overtime of it; minutes of the clock on shift. */
  readonly presentIn: Float64Array;
  readonly overtimeIn: Float64Array;
  readonly hoursIn: Float64Array;
}

/** Reads the calendars of the run as they were worked, with the people that were there in each shift. */
export function crewTime(run: Run): CrewTime {
  const { model: { resources, calendars, programme: { bucketEdges } }, memory, observedFrom, now } = run;
  const buckets = Math.max(0, bucketEdges.length - 1), { crews } = resources;
  const time = {
    usual: new Float64Array(crews), overtime: new Float64Array(crews),
    presentIn: new Float64Array(crews * buckets), overtimeIn: new Float64Array(crews * buckets), hoursIn: new Float64Array(crews * buckets),
  };
  for (let crew = 0; crew < crews; crew++) {
    const calendar = resources.calendar[crew], shifts = run.crewShifts.find((each) => each.crew === run.shop.resources[crew]);
    const start = calendar < 0 ? [observedFrom] : memory.calendars[calendar].start, end = calendar < 0 ? [now] : memory.calendars[calendar].end;
    for (let w = 0, shift = 0, bucket = 0; w < start.length && start[w] < now; w++) {
      const from = Math.max(start[w], observedFrom), to = Math.min(end[w], now);
      if (to <= from) continue;
      if (shifts !== undefined) while (shifts.columns.firstWindow[shift + 1] <= w) shift++;
      const people = shifts === undefined ? resources.amount[crew] : shifts.presentIn(shift), isOvertime = calendar >= 0 && calendars[calendar].overtime[w] === 1;
      (isOvertime ? time.overtime : time.usual)[crew] += people * (to - from);
      while (bucket < buckets && bucketEdges[bucket + 1] <= from) bucket++;
      for (let b = bucket; b < buckets && bucketEdges[b] < to; b++) {
        const minutes = Math.min(to, bucketEdges[b + 1]) - Math.max(from, bucketEdges[b]), at = crew * buckets + b;
        time.presentIn[at] += people * minutes;
        time.hoursIn[at] += minutes;
        if (isOvertime) time.overtimeIn[at] += people * minutes;
      }
    }
  }
  return time;
}

/** Minutes of overtime worked by rule * buckets + bucket. */
export function ruledMinutes(run: Run): Float64Array {
  const { model: { overtime, calendars, programme: { bucketEdges } }, memory, observedFrom, now } = run, buckets = Math.max(0, bucketEdges.length - 1);
  const worked = new Float64Array(overtime.length * buckets);
  overtime.forEach(({ calendar }, rule) => {
    const { rules } = calendars[calendar], { start, end } = memory.calendars[calendar];
    for (let w = 0, b = 0; w < start.length && start[w] < now; w++) {
      while (b < buckets && bucketEdges[b + 1] <= start[w]) b++;
      if ((rules[w] & (1 << rule)) !== 0 && b < buckets) worked[rule * buckets + b] += Math.max(0, Math.min(end[w], now) - Math.max(start[w], observedFrom));
    }
  });
  return worked;
}
