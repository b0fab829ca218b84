import type { PlaceVisit } from '../flow/accounts/changeover-log.js';
import { countTime } from '../flow/model/later.js';
import type { Run } from '../flow/run.js';
import type { Lane } from '../flow/traffic/lane.js';
import { column, over } from './columns.js';

/** Reads what stands on the floor and what moves: stations, steps, buffers, lanes, pulse lines. */
export function observeFloor(run: Run) {
  const { tally, shop, disruptions } = run,
    minutes = run.now - run.observedFrom,
    changeoverLog: readonly (readonly PlaceVisit[])[] = run.changeoverLog?.byStation ?? [];
  return {
    /** Shares by station * states + state. */
    stationShares: stationShares(run, minutes),
    /** By step: visits begun. */
    stepVisits: column(shop.steps, ({ visits }) => visits),
    /** By step: visits of units sent back, as if they did every step on their way again. */
    visitsAgain: addedUp(tally.doneAgain).subarray(0, -1),
    ...observeBuffers(run, minutes),
    /**
     * By station with changeovers: units that took a place. By pair of values, as in the model: changeovers,
     * and their work.
     */
    taken: tally.taken,
    changeovers: tally.changeovers,
    changeoverMinutes: tally.changeoverMinutes,
    /** By station; empty but in the first replication and at stations with changeovers. */
    stays: changeoverLog,
    /** By station: failures, repairs ended, their minutes by the clock in all and at most. */
    failures: disruptions.failures,
    lanes: observeLanes(run, minutes),
    /**
     * By pulse line: moves with units on it, working minutes between them, moves later than the takt and by
     * how much: by station charged, then for want of room ahead.
     */
    pulseLines: shop.pulseLines.map(({ moves, minutesBetween, late, lateMinutes }) => ({
      moves,
      minutesBetween,
      late,
      lateMinutes,
    })),
  };
}

function addedUp(differences: Float64Array): Float64Array {
  let sum = 0;
  return differences.map((each) => (sum += each));
}

const stationShares = ({ shop: { stations } }: Run, minutes: number): Float64Array =>
  Float64Array.from(
    stations.flatMap(({ account, placeCount }) =>
      Array.from(account, (time) => over(time, minutes * placeCount)),
    ),
  );

/** By destination: stations, then lanes. */
function observeBuffers({ buffers }: Run, minutes: number) {
  // Levels beyond the highest that occurred are left out: most buffers are small.
  const used = buffers.map(({ levelTime }) =>
    levelTime.subarray(0, Math.max(1, levelTime.findLastIndex((time) => time > 0) + 1)),
  );
  const bufferLevelsFrom = new Int32Array(used.length + 1);
  used.forEach(({ length }, b) => {
    bufferLevelsFrom[b + 1] = bufferLevelsFrom[b] + length;
  });
  return {
    /** Mean in the buffer. */
    bufferMean: column(buffers, ({ area }) => over(area, minutes)),
    /** Share of time by level, from `bufferLevelsFrom` on, up to the highest level that occurred. */
    bufferLevels: column(
      used.flatMap((times) => [...times]),
      (time) => over(time, minutes),
    ),
    bufferLevelsFrom,
    /**
     * Over the whole run: 1 if a unit ever found no room there; most units in its spaces for any time (in a
     * bank of a lane at all), Infinity for `LEVELS` - 1 and more.
     */
    room: {
      shutOut: Uint8Array.from(buffers, ({ everShutOut }) => Number(everShutOut)),
      most: column(buffers, ({ most, lane }) => lane?.mostInBank ?? most),
    },
  };
}

/**
 * By lane: trips, units carried and their wait for a truck; shares of truck-time; mean units in an arrival
 * bank without a limit.
 */
function observeLanes({ shop: { lanes }, model, now }: Run, minutes: number) {
  const share = (time: number, { id }: Lane): number =>
    over(
      time,
      countTime(model, now, minutes, (stage) => stage.lanes.trucks[id]),
    );
  return {
    trips: column(lanes, ({ trips }) => trips),
    carried: column(lanes, ({ carried }) => carried),
    carriedAgain: column(lanes, ({ carriedAgain }) => carriedAgain),
    waitMinutes: column(lanes, ({ waitMinutes }) => waitMinutes),
    truckBusy: column(lanes, (lane) => share(lane.busy, lane)),
    truckBlocked: column(lanes, (lane) => share(lane.blocked, lane)),
    arrivedMean: column(lanes, ({ arrivedArea }) => over(arrivedArea, minutes)),
    truckFree: column(lanes, (lane) => share(lane.atBase, lane)),
  };
}
