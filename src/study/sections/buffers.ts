import { LEVELS } from '../../flow/floor/memory.js';
import { UNLIMITED } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { unlessSeldom } from '../statistics/skewed-interval.js';
import { sum } from '../statistics/sums.js';
import { PLACE_STATES } from './stations.js';

export interface BufferResult {
  readonly name: string;
  readonly kind: 'buffer' | 'bank';
  readonly site: string;
  /** null: unlimited. */
  readonly spaces: number | null;
  readonly mean: Estimate;
  /**
   * Share of time with no space free; null where unlimited, or where it is not known: more than 63 spaces, an
   * arrival bank of several.
   */
  readonly full: Estimate | null;
  /**
   * Share of time at each level 0, 1, 2 .. (the last one: that and above), mean over replications; empty
   * where it is not known.
   */
  readonly levels: readonly number[];
}

const overTime = (mean: Deferred<Estimate>): Deferred<Estimate> =>
  new Deferred(() => unlessSeldom(mean.value));

const STARVED = PLACE_STATES.indexOf('starved');

/** Buffers ahead of stations, arrival banks, and banks of lanes; those without a space are left out. */
export function buffers(sample: Sample): Pending<BufferResult[]> {
  const { stations, lanes, siteNames } = sample.model;
  const ofStations = Array.from(stations.names, (name, id): Pending<BufferResult> | null => {
    const site = siteNames[stations.site[id]];
    if (stations.isBank[id]) return arrivalBank(sample, id, site);
    const spaces = stations.buffer[id];
    return spaces > 0 || stations.reworkBuffer[id] > 0
      ? waitingRoom(sample, { name, kind: 'buffer', site }, id, spaces)
      : null;
  });
  const ofLanes = lanes.names.map((name, id) =>
    lanes.bank[id] > 0
      ? waitingRoom(
          sample,
          { name: `${name}: bank`, kind: 'bank', site: siteNames[lanes.from[id]] },
          stations.count + id,
          lanes.bank[id],
        )
      : null,
  );
  const ofEndless = lanes.names.map((name, id) =>
    lanes.endless[id] === 1
      ? {
          name: `${name}: arrival bank`,
          kind: 'bank' as const,
          site: siteNames[lanes.to[id]],
          spaces: null,
          mean: overTime(sample.amount((each) => each.lanes.arrivedMean[id])),
          full: null,
          levels: [],
        }
      : null,
  );
  return [...ofStations, ...ofEndless, ...ofLanes].filter((each) => each !== null);
}

/**
 * Spaces that units sent back have of their own are not counted, the units in them are: a level may go above
 * the spaces.
 */
function waitingRoom(
  sample: Sample,
  base: Pick<BufferResult, 'name' | 'kind' | 'site'>,
  destination: number,
  spaces: number,
): Pending<BufferResult> {
  const isUnlimited = spaces >= UNLIMITED;
  const atOrAbove = (seen: Observation): number => sum(levelsOf(seen, destination).subarray(spaces));
  const time = sample.fold(new Float64Array(LEVELS), (sums, each) => {
    levelsOf(each, destination).forEach((share, level) => {
      sums[level] += share;
    });
    return sums;
  });
  return {
    ...base,
    spaces: isUnlimited ? null : spaces,
    mean: overTime(sample.amount(({ bufferMean }) => bufferMean[destination])),
    // The last level told apart stands for that many and more.
    full: spaces > 0 && spaces < LEVELS ? overTime(sample.share(atOrAbove)) : null,
    levels: new Deferred(() => {
      const levels = Array.from(time.value, (sum) => Math.min(1, sum / sample.replications)),
        used = levels.findLastIndex((share) => share > 0) + 1;
      // Without a limit one level beyond the highest seen shows that none was cut off.
      return levels.slice(
        0,
        isUnlimited ? Math.min(LEVELS, used + 1) : Math.min(LEVELS, Math.max(used, spaces + 1)),
      );
    }),
  };
}

/** Shares of time by level, up to the highest that occurred. */
function levelsOf({ bufferLevels, bufferLevelsFrom }: Observation, destination: number): Float64Array {
  return bufferLevels.subarray(bufferLevelsFrom[destination], bufferLevelsFrom[destination + 1]);
}

/** The places of an arrival bank are its spaces. How many are taken at once is known only of a single one. */
function arrivalBank(sample: Sample, station: number, site: string): Pending<BufferResult> {
  const { names, places } = sample.model.stations,
    spaces = places[station];
  const taken = ({ stationShares }: Observation): number =>
    1 - stationShares[station * PLACE_STATES.length + STARVED];
  const full = spaces === 1 ? overTime(sample.share(taken)) : null;
  return {
    name: names[station],
    kind: 'bank',
    site,
    spaces,
    mean: overTime(sample.amount((each) => taken(each) * spaces)),
    full,
    levels: full === null ? [] : new Deferred(() => [1 - full.value.mean, full.value.mean]),
  };
}
