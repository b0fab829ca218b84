import type { Pending } from './later.js';
import type { PulseLineResult } from './results-pulse.js';
import { ratio, type Sample } from './sample.js';

/** Pulse lines in the order of the scenario. */
export function pulseLines(sample: Sample): Pending<PulseLineResult[]> {
  const { pulseLines: columns, stations } = sample.model;
  return columns.names.map((name, id) => {
    const own = Array.from(
      columns.station.subarray(columns.stationStart[id], columns.stationStart[id + 1]),
      (station) => stations.names[station],
    );
    return {
      name,
      stations: own,
      taktHours: columns.takt[id] / 60,
      moves: sample.amount(({ pulseLines }) => pulseLines[id].moves),
      hoursBetween: sample.amount(({ pulseLines }) =>
        ratio(pulseLines[id].minutesBetween / 60, pulseLines[id].moves),
      ),
      late: sample.share(({ pulseLines }) => ratio(pulseLines[id].late, pulseLines[id].moves)),
      lateHours: sample.amount(
        ({ pulseLines }) => pulseLines[id].lateMinutes.reduce((a, b) => a + b, 0) / 60,
      ),
      charged: [...own, null].map((station, i) => ({
        station,
        lateHours: sample.amount(({ pulseLines }) => pulseLines[id].lateMinutes[i] / 60),
      })),
    };
  });
}
