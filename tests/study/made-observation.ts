import { Tally } from '../../src/flow/accounts/tally.js';
import { UNLIMITED } from '../../src/flow/model/model.js';
import { HOLD_NONE } from '../../src/flow/model/quality.js';
import type { Observation } from '../../src/measure/observe.js';
import { observeItems } from '../../src/measure/quality.js';
import { compile } from '../../src/scenario/compile.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import { PLACE_STATES } from '../../src/study/sections/stations.js';
import type { Results } from '../../src/study/simulate/results.js';
import {
  back,
  chance,
  dayShift,
  feeder,
  lane,
  minutes,
  programme,
  repair,
  scenario,
  site,
  station,
  step,
} from '../scenario/compile-scenario.js';
import { summarise } from './summarise.js';

export const LEVELS = 64;

/**
 * An invented scenario on which results can be reckoned by hand: 2 a day in the week of Monday 2027-03-01,
 * then 4 a day for 80 units, that is in the four weeks from 2027-03-08. Two stations with buffers, a crew, a
 * lane with banks, an axle stock, an inspection (of the unit's route) and a gauge (of the feeder's).
 */
export const twoPlants = scenario({
  calendars: { days: dayShift },
  sites: {
    coachworks: site(
      { booth: station({ places: 2, buffer: 2 }), bay: station({ buffer: undefined }) },
      { calendar: 'days', crews: { painters: { headcount: 3, calendar: undefined } } },
    ),
    'final plant': site({ line: station(), bench: station() }, { calendar: 'days' }),
  },
  lanes: { ferry: lane('coachworks', 'final plant', { trucks: 1, capacity: 2, bank: 3, arrivalBank: 1 }) },
  defects: { runs: { note: undefined }, gap: { note: undefined } },
  feeders: {
    axles: feeder(
      [
        step('weld', 'bench', { work: minutes(5), creates: { gap: chance(0.1) } }),
        step('gauge', 'bench', { work: minutes(1), finds: { gap: repair(1, minutes(1)) } }),
      ],
      { target: 2 },
    ),
  },
  route: [
    step('prime', 'booth', { work: minutes(10), crew: { painters: 1 }, creates: { runs: chance(0.2) } }),
    step('inspect', 'bay', { work: minutes(5), finds: { runs: back(0.9, 'prime', { limit: 2 }) } }),
    { kind: 'lane', lane: 'ferry', when: {} },
    step('fit', 'line', { work: minutes(10), parts: { axles: 1 } }),
    step('test', 'line', { work: minutes(5), fails: back(0.1, 'fit', { limit: 1, atLimit: 'scrap' }) }),
  ],
  programme: programme({
    quantity: 90,
    release: {
      kind: 'rate',
      phases: [
        { from: '2027-03-01', perDay: 2 },
        { from: '2027-03-08', perDay: 4 },
      ],
    },
  }),
});

/**
 * Numbers of `twoPlants`. Stations: booth, bay, line, bench, ferry's arrival bank. Resources of utilisation:
 * these, painters, ferry.
 */
export const BOOTH = 0,
  BAY = 1,
  ARRIVAL_BANK = 4,
  PAINTERS = 5,
  FERRY = 6,
  FERRY_BANK = 5;

/** An observation of nothing: all zero, places starved, buffers empty, finished after six weeks. */
export function observation(of: Scenario, replication: number, more: Partial<Observation> = {}): Observation {
  const model = compile(of),
    { stations, lanes, resources, supplies, steps, siteNames, thens, slots, programme, quality, companions } =
      model,
    holds = quality.hold.filter((hold) => hold !== HOLD_NONE).length;
  const buckets = programme.bucketEdges.length - 1,
    locations = siteNames.length + lanes.count,
    destinations = stations.count + lanes.count;
  const inspections = Array.from(steps.station.keys()).filter(
    (id) => steps.findStart[id + 1] > steps.findStart[id],
  ).length;
  const zeros = (length: number): Float64Array => new Float64Array(length),
    units = programme.quantity < UNLIMITED ? programme.quantity : 0;
  // No scenario here has any.
  const none = zeros(0);
  const stationShares = zeros(stations.count * PLACE_STATES.length),
    bufferLevels = zeros(destinations * LEVELS);
  for (let id = 0; id < stations.count; id++)
    stationShares[id * PLACE_STATES.length + PLACE_STATES.indexOf('starved')] = 1;
  for (let id = 0; id < destinations; id++) bufferLevels[id * LEVELS] = 1;
  return {
    replication,
    outcome: 'finished',
    felt: {
      places: new Uint8Array(stations.count),
      trucks: new Uint8Array(lanes.count),
      resources: new Uint8Array(resources.count),
      draws: new Uint8Array(model.draws.length),
    },
    endedAt: 6 * 7 * 1440,
    minutes: 6 * 7 * 1440,
    entered: 90,
    shipped: 0,
    scrapped: 0,
    openAtShipping: 0,
    wip: 0,
    wipByLocation: zeros(locations),
    leadMean: NaN,
    leadP50: NaN,
    leadP90: NaN,
    leadP95: NaN,
    leadLeast: Infinity,
    leadGreatest: 0,
    leadFirstBin: 0,
    leadBins: new Int32Array(0),
    stationShares,
    stepVisits: zeros(steps.count),
    bufferMean: zeros(destinations),
    bufferLevels,
    room: { shutOut: new Uint8Array(destinations), most: zeros(destinations) },
    momentary: null,
    startUp: null,
    bufferLevelsFrom: Int32Array.from({ length: destinations + 1 }, (_, id) => id * LEVELS),
    crewBusy: zeros(resources.crews),
    stockMean: zeros(resources.count),
    stockOut: zeros(resources.count),
    supplies: {
      onOrder: zeros(supplies.count),
      least: zeros(supplies.count),
      lots: zeros(supplies.count),
      lateLots: zeros(supplies.count),
      received: zeros(supplies.count),
      used: zeros(supplies.count),
      waits: zeros(supplies.count),
      waitMinutes: zeros(supplies.count),
    },
    kept: {
      held: zeros(companions.count),
      coming: zeros(companions.count),
      unstaffed: zeros(companions.count),
      ended: zeros(companions.count),
    },
    equipment: { used: none, there: none, waits: none, waitMinutes: none },
    inspections: {
      inspected: zeros(inspections),
      firstVisits: zeros(inspections),
      firstPasses: zeros(inspections),
      sentBack: zeros(inspections),
      repaired: zeros(inspections),
      scrapped: zeros(inspections),
      escaped: zeros(inspections),
    },
    taken: zeros(stations.count),
    changeovers: zeros(stations.changeoverDraw.length),
    changeoverMinutes: zeros(stations.changeoverDraw.length),
    stays: [],
    crewTime: {
      usual: zeros(resources.crews),
      overtime: zeros(resources.crews),
      ofOne: { usual: zeros(resources.crews), overtime: zeros(resources.crews) },
      hours: Array.from({ length: resources.crews }, () => ({
        onShift: zeros(buckets),
        overtime: zeros(buckets),
      })),
      people: new Array<null>(resources.crews).fill(null),
    },
    crewEngagedIn: zeros(resources.crews * buckets),
    overtimeRules: { looked: zeros(0), worked: zeros(0), minutesIn: zeros(0) },
    repairMinutes: 0,
    limitReached: zeros(thens.count),
    created: zeros(slots.count),
    visitsAgain: zeros(steps.count),
    quality: observeItems(new Tally(model, inspections, holds), 6 * 7 * 1440),
    reworkMinutes: zeros(resources.crews),
    lanes: {
      trips: zeros(lanes.count),
      carried: zeros(lanes.count),
      carriedAgain: zeros(lanes.count),
      waitMinutes: zeros(lanes.count),
      truckBusy: zeros(lanes.count),
      truckBlocked: zeros(lanes.count),
      arrivedMean: zeros(lanes.count),
      truckFree: zeros(lanes.count),
    },
    utilisation: zeros(stations.count + resources.crews + lanes.count),
    activePeriod: zeros(stations.count + resources.crews + lanes.count),
    enteredIn: new Int32Array(buckets),
    shippedIn: new Int32Array(buckets),
    shippedOn: new Int32Array(0),
    minutesIn: zeros(buckets).fill(10080, 0, 6),
    wipIn: zeros(locations * buckets),
    enteredAt: zeros(units).fill(NaN),
    shippedAt: zeros(units).fill(NaN),
    optionsOf: new Uint8Array(0),
    dueAt: zeros(0),
    due: 0,
    late: 0,
    lateMinutes: 0,
    standstill: { ring: [], behind: 0, held: [] },
    failures: {
      count: zeros(stations.count),
      repairs: zeros(stations.count),
      minutes: zeros(stations.count),
      longest: zeros(stations.count),
    },
    pulseLines: [],
    ...more,
  };
}

/** Observations in which units take three days and the given numbers are shipped week by week. */
export function shipping(
  weeks: readonly number[],
  more: Partial<Observation> = {},
): (replication: number) => Observation {
  return (replication) => {
    const base = observation(twoPlants, replication),
      shippedIn = base.shippedIn.slice();
    shippedIn.set(weeks);
    const shippedOn = new Int32Array(7 * weeks.length);
    weeks.forEach((units, week) => {
      shippedOn[7 * week + 4] = units; // on the Friday
    });
    const shipped = weeks.reduce((sum, units) => sum + units, 0);
    return {
      ...base,
      shippedIn,
      shippedOn,
      shipped,
      leadMean: 3 * 1440,
      leadP50: 3 * 1440,
      leadP90: 3 * 1440,
      leadLeast: 3 * 1440,
      leadGreatest: 3 * 1440,
      ...more,
    };
  };
}

/** Results of `twoPlants`, with replications numbered from 1. */
export function resultsOf(
  made: readonly ((replication: number) => Observation)[],
  of: Scenario = twoPlants,
): Results {
  return summarise({
    scenario: of,
    model: compile(of),
    observations: made.map((make, i) => make(i + 1)),
    file: 'two-plants.yaml',
    seed: 'hand',
    level: 0.95,
  });
}
/** An array of zeros with some entries set. */
export function withEntries(length: number, entries: Readonly<Record<number, number>>): Float64Array {
  const array = new Float64Array(length);
  for (const [index, value] of Object.entries(entries)) array[Number(index)] = value;
  return array;
}
