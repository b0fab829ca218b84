import { rowsOf } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sum } from '../statistics/sums.js';

/** A pulse line in `results.json`. Hours are working hours of the line. */
export interface PulseLineResult {
  readonly name: string;
  readonly stations: readonly string[];
  readonly taktHours: number;
  /** Moves with units on the line in the time observed, and mean hours from one move to the next. */
  readonly moves: Estimate;
  readonly hoursBetween: Estimate;
  /** Share of the moves that came later than the takt, and hours by which they were late, in all. */
  readonly late: Estimate;
  readonly lateHours: Estimate;
  /**
   * The same by what was the last to be ready: each station, then room ahead of the line (`station` null).
   */
  readonly charged: readonly { readonly station: string | null; readonly lateHours: Estimate }[];
}

/** Pulse lines in the order of the scenario. */
export function pulseLines(sample: Sample): Pending<PulseLineResult[]> {
  const { pulseLines: columns, stations } = sample.model;
  return columns.names.map((name, id) => {
    const own = rowsOf(columns.stationStart, id).map((row) => stations.names[columns.station[row]]);
    return {
      name,
      stations: own,
      taktHours: columns.takt[id] / 60,
      moves: sample.events(({ pulseLines }) => pulseLines[id].moves),
      hoursBetween: sample.amount(({ pulseLines }) =>
        ratio(pulseLines[id].minutesBetween / 60, pulseLines[id].moves),
      ),
      late: sample.share(({ pulseLines }) => ratio(pulseLines[id].late, pulseLines[id].moves)),
      lateHours: sample.amount(({ pulseLines }) => sum(pulseLines[id].lateMinutes) / 60),
      charged: [...own, null].map((station, i) => ({
        station,
        lateHours: sample.amount(({ pulseLines }) => pulseLines[id].lateMinutes[i] / 60),
      })),
    };
  });
}
