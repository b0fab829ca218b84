import { FINISHED, GRIDLOCK } from '../flow/engine.js';
import { stuckUnits } from '../flow/gridlock.js';
import type { Run } from '../flow/run.js';
import { BIN_COUNT } from '../flow/bins.js';
import type { Tally } from '../flow/tally.js';
import type { Observation } from './observation.js';
import { observeQuality } from './observe-quality.js';
import { crewTime, ruledMinutes } from './crew-time.js';
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
    stays: run.boothLog?.byStation ?? [],
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
      run.activeWatch === null
        ? null
        : { sole: shares(run.activeWatch.sole), shifting: shares(run.activeWatch.shifting) },
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
  used.forEach((each, b) =>
    each.forEach((time, level) => {
      bufferLevels[bufferLevelsFrom[b] + level] = over(time, minutes);
    }),
  );
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
