import { BIN_COUNT } from '../flow/accounts/bins.js';
import type { PlaceVisit } from '../flow/accounts/changeover-log.js';
import type { Tally } from '../flow/accounts/tally.js';
import { FINISHED, GRIDLOCK } from '../flow/engine.js';
import { stuckUnits } from '../flow/gridlock.js';
import type { Stuck } from '../flow/gridlock.js';
import type { Run } from '../flow/run.js';
import { crewTime, ruledMinutes } from './crew-time.js';
import type { CrewTime } from './crew-time.js';
import { observeQuality } from './quality.js';
import type { QualityObservation } from './quality.js';
import { binQuantile } from './quantile.js';
import { activePeriods, crewBusy, crewsOf, utilisations } from './utilisation.js';

/** Reads the accounts of a run that has ended. */
export function observe(run: Run, replication: number): Observation {
  const { tally, shop, locations } = run,
    minutes = run.now - run.observedFrom;
  const shares = (times: Iterable<number>): Float64Array =>
    Float64Array.from(times, (time) => over(time, minutes));
  const { buffers, disruptions } = run,
    people = crewTime(run);
  return {
    replication,
    outcome: run.outcome === FINISHED ? 'finished' : run.outcome === GRIDLOCK ? 'gridlock' : 'ended',
    endedAt: run.now,
    minutes,
    entered: tally.entered,
    shipped: tally.shipped,
    scrapped: tally.scrapped,
    openAtShipping: tally.openAtShipping,
    due: tally.due,
    late: tally.late,
    lateMinutes: tally.lateMinutes,
    wip: over(locations.totalArea, minutes),
    wipByLocation: shares(locations.area),
    ...leadTimes(tally),
    stationShares: Float64Array.from(
      shop.stations.flatMap(({ account, places }) =>
        Array.from(account, (time) => over(time, minutes * places.length)),
      ),
    ),
    stepVisits: Float64Array.from(shop.steps, ({ visits }) => visits),
    bufferMean: shares(buffers.map(({ area }) => area)),
    ...levelShares(run, minutes),
    room: {
      shutOut: Uint8Array.from(buffers, ({ everShutOut }) => Number(everShutOut)),
      most: Float64Array.from(buffers, ({ most }) => most),
    },
    crewBusy: Float64Array.from(crewsOf(run), (crew) => crewBusy(run, crew, people)),
    crewTime: people,
    crewEngagedIn: tally.engagedIn,
    overtimeRules: {
      looked: Float64Array.from(run.overtimeRules, ({ looked }) => looked),
      worked: Float64Array.from(run.overtimeRules, ({ worked }) => worked),
      minutesIn: ruledMinutes(run),
    },
    stockMean: shares(shop.resources.map(({ area }) => area)),
    stockOut: shares(shop.resources.map(({ out }) => out)),
    supplies: {
      onOrder: shares(shop.supplies.map(({ onOrderMinutes }) => onOrderMinutes)),
      least: Float64Array.from(shop.supplies, ({ least }) => least),
      lots: Float64Array.from(shop.supplies, ({ lots }) => lots),
      lateLots: Float64Array.from(shop.supplies, ({ lateLots }) => lateLots),
      waits: Float64Array.from(shop.supplies, ({ waits }) => waits),
      waitMinutes: Float64Array.from(shop.supplies, ({ waitMinutes }) => waitMinutes),
    },
    kept: {
      held: shares(shop.stays.map(({ heldMinutes }) => heldMinutes)),
      coming: shares(shop.stays.map(({ comingMinutes }) => comingMinutes)),
      ended: Float64Array.from(shop.stays, ({ ended }) => ended),
    },
    inspections: {
      inspected: tally.inspected,
      firstVisits: tally.firstVisits,
      firstPasses: tally.firstPasses,
      sentBack: tally.sentBack,
      repaired: tally.repaired,
      scrapped: tally.scrappedAt,
      escaped: tally.escaped,
    },
    taken: tally.taken,
    changeovers: tally.changeovers,
    changeoverMinutes: tally.changeoverMinutes,
    stays: run.changeoverLog?.byStation ?? [],
    repairMinutes: tally.repairMinutes,
    limitReached: tally.limitReached,
    created: tally.created,
    quality: observeQuality(tally, minutes),
    reworkMinutes: Float64Array.from(crewsOf(run), ({ rework }) => rework),
    lanes: {
      trips: Float64Array.from(shop.lanes, ({ trips }) => trips),
      carried: Float64Array.from(shop.lanes, ({ carried }) => carried),
      waitMinutes: Float64Array.from(shop.lanes, ({ waitMinutes }) => waitMinutes),
      truckBusy: Float64Array.from(shop.lanes, ({ busy, trucks }) => over(busy, minutes * trucks.length)),
      truckBlocked: Float64Array.from(shop.lanes, ({ blocked, trucks }) =>
        over(blocked, minutes * trucks.length),
      ),
      truckFree: Float64Array.from(shop.lanes, ({ atBase, trucks }) => over(atBase, minutes * trucks.length)),
    },
    utilisation: utilisations(run, people),
    activePeriod: activePeriods(run),
    startUp:
      run.startUp === null
        ? null
        : run.startUp.unitMinutes.map((unitMinutes) => over(unitMinutes, run.startUp!.partMinutes)),
    momentary:
      run.bottleneckWatch === null
        ? null
        : { sole: shares(run.bottleneckWatch.sole), shifting: shares(run.bottleneckWatch.shifting) },
    enteredIn: tally.enteredIn,
    shippedIn: tally.shippedIn,
    minutesIn: tally.minutesIn,
    wipIn: tally.unitMinutesIn.map((unitMinutes, i) =>
      over(unitMinutes, tally.minutesIn[i % tally.minutesIn.length]),
    ),
    enteredAt: run.enteredAt,
    shippedAt: run.shippedAt,
    optionsOf: run.optionsOf,
    dueAt: run.dueAt,
    failures: {
      count: disruptions.failures,
      repairs: disruptions.repairs,
      minutes: disruptions.repairMinutes,
      longest: disruptions.longestRepair,
    },
    outages: {
      openUnits: Float64Array.from(disruptions.outages, ({ openUnits }) => openUnits),
      recoveredAt: Float64Array.from(disruptions.outages, ({ recoveredAt }) => recoveredAt),
      openByDay: disruptions.openUnits,
    },
    pulseLines: shop.pulseLines.map(({ moves, minutesBetween, late, lateMinutes }) => ({
      moves,
      minutesBetween,
      late,
      lateMinutes,
    })),
    stuck: run.outcome === GRIDLOCK ? stuckUnits(run) : [],
  };
}

const over = (value: number, whole: number): number => (whole > 0 ? value / whole : 0);

/** Levels beyond the highest that occurred are left out: most buffers are small. */
function levelShares(
  { buffers }: Run,
  minutes: number,
): Pick<Observation, 'bufferLevels' | 'bufferLevelsFrom'> {
  const used = buffers.map(({ levelTime }) =>
    levelTime.subarray(0, Math.max(1, levelTime.findLastIndex((time) => time > 0) + 1)),
  );
  const bufferLevelsFrom = new Int32Array(used.length + 1);
  used.forEach((each, b) => {
    bufferLevelsFrom[b + 1] = bufferLevelsFrom[b] + each.length;
  });
  const bufferLevels = new Float64Array(bufferLevelsFrom[used.length]);
  used.forEach((each, b) => {
    each.forEach((time, level) => {
      bufferLevels[bufferLevelsFrom[b] + level] = over(time, minutes);
    });
  });
  return { bufferLevels, bufferLevelsFrom };
}

type LeadTimes = Pick<
  Observation,
  'leadMean' | 'leadP50' | 'leadP90' | 'leadP95' | 'leadLeast' | 'leadGreatest' | 'leadFirstBin' | 'leadBins'
>;

function leadTimes(tally: Tally): LeadTimes {
  const { leadBins, leadMin, leadMax, shipped } = tally;
  let first = 0,
    end = BIN_COUNT;
  while (first < end && leadBins[first] === 0) first++;
  while (end > first && leadBins[end - 1] === 0) end--;
  const quantile = (p: number): number => binQuantile(leadBins, p, leadMin, leadMax);
  return {
    leadMean: shipped > 0 ? tally.leadSum / shipped : NaN,
    leadP50: quantile(0.5),
    leadP90: quantile(0.9),
    leadP95: quantile(0.95),
    leadLeast: leadMin,
    leadGreatest: leadMax,
    leadFirstBin: first,
    leadBins: leadBins.slice(first, end),
  };
}

/**
 * What was observed in one replication. Plain data that can be sent between workers. Times are minutes since
 * the programme's start, shares 0..1 of the observed time, arrays in the order of the model's ids.
 */
export interface Observation {
  readonly replication: number;
  readonly outcome: 'finished' | 'ended' | 'gridlock';
  /** When the run ended, and the length observed. */
  readonly endedAt: number;
  readonly minutes: number;
  readonly entered: number;
  readonly shipped: number;
  readonly scrapped: number;
  readonly openAtShipping: number;
  /** Units shipped that had a due date, those of them shipped after it, and by how many minutes in all. */
  readonly due: number;
  readonly late: number;
  readonly lateMinutes: number;
  /** Mean work in process, and by location (sites, then lanes). */
  readonly wip: number;
  readonly wipByLocation: Float64Array;
  /** Lead time of units shipped, minutes; NaN if none was. */
  readonly leadMean: number;
  readonly leadP50: number;
  readonly leadP90: number;
  readonly leadP95: number;
  readonly leadLeast: number;
  readonly leadGreatest: number;
  /** Counts in bins `leadFirstBin`, +1, .. of `tally.ts`. */
  readonly leadFirstBin: number;
  readonly leadBins: Int32Array;
  /** Shares by station * states + state. */
  readonly stationShares: Float64Array;
  /** By step: visits begun. */
  readonly stepVisits: Float64Array;
  /**
   * By destination (stations, then lanes): mean in the buffer, share of time by level, from
   * `bufferLevelsFrom` on, up to the highest level that occurred.
   */
  readonly bufferMean: Float64Array;
  readonly bufferLevels: Float64Array;
  readonly bufferLevelsFrom: Int32Array;
  /**
   * By destination, over the whole run: 1 if a unit ever found no room there; most units in its spaces at a
   * time, Infinity for `LEVELS` - 1 and more.
   */
  readonly room: { readonly shutOut: Uint8Array; readonly most: Float64Array };
  /** By crew: engaged person-time over time on shift. */
  readonly crewBusy: Float64Array;
  /**
   * By supply: mean on order (of a delivery plan: overdue), least stock, lots received and those of them
   * late, waits for want of it and their minutes.
   */
  readonly supplies: {
    readonly onOrder: Float64Array;
    readonly least: Float64Array;
    readonly lots: Float64Array;
    readonly lateLots: Float64Array;
    readonly waits: Float64Array;
    readonly waitMinutes: Float64Array;
  };
  /** Person-minutes of crews on shift, see `crew-time.ts`; and engaged, by crew * buckets + bucket. */
  readonly crewTime: CrewTime;
  readonly crewEngagedIn: Float64Array;
  /** By overtime rule: how often it was looked at, and worked; minutes worked by rule * buckets + bucket. */
  readonly overtimeRules: {
    readonly looked: Float64Array;
    readonly worked: Float64Array;
    readonly minutesIn: Float64Array;
  };
  /** By resource: mean stock (of carriers: free) and share of time without stock; 0 for crews. */
  readonly stockMean: Float64Array;
  readonly stockOut: Float64Array;
  /** By carriers and teams: mean number with units and on the way back, holds that ended. */
  readonly kept: { readonly held: Float64Array; readonly coming: Float64Array; readonly ended: Float64Array };
  readonly inspections: {
    readonly inspected: Float64Array;
    readonly firstVisits: Float64Array;
    readonly firstPasses: Float64Array;
    readonly sentBack: Float64Array;
    readonly repaired: Float64Array;
    readonly scrapped: Float64Array;
    readonly escaped: Float64Array;
  };
  /**
   * By station with changeovers: units that took a place. By pair of values, as in the model: changeovers,
   * and their work.
   */
  readonly taken: Float64Array;
  readonly changeovers: Float64Array;
  readonly changeoverMinutes: Float64Array;
  /** By station; empty but in the first replication and at stations with changeovers. */
  readonly stays: readonly (readonly PlaceVisit[])[];
  readonly repairMinutes: number;
  readonly limitReached: Float64Array;
  readonly created: Float64Array;
  readonly quality: QualityObservation;
  /** By crew: person-minutes of work done again and of repairs. */
  readonly reworkMinutes: Float64Array;
  readonly lanes: {
    readonly trips: Float64Array;
    readonly carried: Float64Array;
    readonly waitMinutes: Float64Array;
    readonly truckBusy: Float64Array;
    readonly truckBlocked: Float64Array;
    readonly truckFree: Float64Array;
  };
  /** Resources that can be a bottleneck: stations, crews, lanes, carriers. */
  readonly utilisation: Float64Array;
  /**
   * In the same order: share of the time observed as the sole momentary bottleneck, and as a shifting one;
   * null where it was not followed.
   */
  readonly momentary: { readonly sole: Float64Array; readonly shifting: Float64Array } | null;
  /**
   * Mean units inside by equal part of a steady-state run from its empty start; null where that was not
   * followed.
   */
  readonly startUp: Float64Array | null;
  /** Mean active period, minutes; 0 if there was none. */
  readonly activePeriod: Float64Array;
  /** By bucket. */
  readonly enteredIn: Int32Array;
  readonly shippedIn: Int32Array;
  readonly minutesIn: Float64Array;
  /** Mean work in process by location * buckets + bucket. */
  readonly wipIn: Float64Array;
  /** By build number - 1, NaN where it did not happen; empty without a quantity. */
  readonly enteredAt: Float64Array;
  readonly shippedAt: Float64Array;
  readonly optionsOf: Uint8Array;
  /** When it is due; Infinity where it is not; empty where nothing is due. */
  readonly dueAt: Float64Array;
  /** By station: failures, repairs ended, their minutes by the clock in all and at most. */
  readonly failures: {
    readonly count: Float64Array;
    readonly repairs: Float64Array;
    readonly minutes: Float64Array;
    readonly longest: Float64Array;
  };
  /**
   * By outage: units open (released and not yet out) when it began and the time when no more were open again,
   * NaN where it did not come so far; open units by day of the watched one.
   */
  readonly outages: {
    readonly openUnits: Float64Array;
    readonly recoveredAt: Float64Array;
    readonly openByDay: Float64Array;
  };
  /**
   * By pulse line: moves with units on it, working minutes between them, moves later than the takt and by how
   * much: by station charged, then for want of room ahead.
   */
  readonly pulseLines: readonly {
    readonly moves: number;
    readonly minutesBetween: number;
    readonly late: number;
    readonly lateMinutes: Float64Array;
  }[];
  readonly stuck: readonly Stuck[];
}
