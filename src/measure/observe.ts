import { FINISHED, GRIDLOCK } from '../flow/engine.js';
import { stuckUnits } from '../flow/gridlock.js';
import type { Run } from '../flow/run.js';
import { BIN_COUNT, type Tally } from '../flow/tally.js';
import type { Observation } from './observation.js';
import { binQuantile } from './quantile.js';
import { activePeriods, utilisations } from './utilisation.js';

/** Reads the accounts of a run that has ended. */
export function observe(run: Run, replication: number): Observation {
  const { tally, model, places, destinations, locations } = run, minutes = run.now - run.observedFrom;
  const share = (column: Float64Array): Float64Array => column.map((value) => (minutes > 0 ? value / minutes : 0));
  const { crews } = model.resources;
  return {
    replication,
    outcome: run.outcome === FINISHED ? 'finished' : run.outcome === GRIDLOCK ? 'gridlock' : 'ended',
    endedAt: run.now,
    minutes,
    entered: tally.entered,
    shipped: tally.shipped,
    scrapped: tally.scrapped,
    openAtShipping: tally.openAtShipping,
    wip: minutes > 0 ? locations.totalArea / minutes : 0,
    wipByLocation: share(locations.area),
    ...leadTimes(tally),
    stationShares: stationShares(run, minutes),
    stepVisits: tally.stepVisits.slice(),
    bufferMean: share(destinations.area),
    bufferLevels: share(destinations.levelTime),
    crewBusy: run.engaged.map((engaged, crew) => over(engaged, run.worked(model.resources.calendar[crew], run.observedFrom, run.now) * model.resources.amount[crew])),
    stockMean: share(run.stockArea),
    stockOut: share(run.stockOut).fill(0, 0, crews),
    inspections: {
      inspected: tally.inspected, firstVisits: tally.firstVisits, firstPasses: tally.firstPasses,
      sentBack: tally.sentBack, repaired: tally.repaired, scrapped: tally.scrappedAt, escaped: tally.escaped,
    },
    repairMinutes: tally.repairMinutes,
    limitReached: tally.limitReached,
    created: tally.created,
    lanes: {
      trips: tally.trips, carried: tally.carried, waitMinutes: tally.laneWait,
      truckBusy: run.truckBusy.map((busy, lane) => over(busy, minutes * model.lanes.trucks[lane])),
    },
    utilisation: utilisations(run),
    activePeriod: activePeriods(run),
    enteredIn: tally.enteredIn,
    shippedIn: tally.shippedIn,
    minutesIn: tally.minutesIn,
    wipIn: tally.unitMinutesIn.map((unitMinutes, i) => over(unitMinutes, tally.minutesIn[i % tally.minutesIn.length])),
    enteredAt: run.enteredAt,
    shippedAt: run.shippedAt,
    optionsOf: run.optionsOf,
    stuck: run.outcome === GRIDLOCK ? stuckUnits(run) : [],
  };

  function stationShares(of: Run, observed: number): Float64Array {
    const stations = of.plan.stationCount;
    return places.account.map((time, i) => over(time, observed * model.stations.places[i % stations]));
  }
}

const over = (value: number, whole: number): number => (whole > 0 ? value / whole : 0);

type LeadTimes = Pick<Observation, 'leadMean' | 'leadP50' | 'leadP90' | 'leadP95' | 'leadLeast' | 'leadGreatest' | 'leadFirstBin' | 'leadBins'>;

function leadTimes(tally: Tally): LeadTimes {
  const { leadBins, leadMin, leadMax, shipped } = tally;
  let first = 0, end = BIN_COUNT;
  while (first < end && leadBins[first] === 0) first++;
  while (end > first && leadBins[end - 1] === 0) end--;
  const quantile = (p: number): number => binQuantile(leadBins, p, leadMin, leadMax);
  return {
    leadMean: shipped > 0 ? tally.leadSum / shipped : NaN,
    leadP50: quantile(0.5), leadP90: quantile(0.9), leadP95: quantile(0.95),
    leadLeast: leadMin, leadGreatest: leadMax,
    leadFirstBin: first,
    leadBins: leadBins.slice(first, end),
  };
}
