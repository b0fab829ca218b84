import type { Resource } from '../flow/claims/resource.js';
import type { Supply } from '../flow/claims/supply.js';
import { isActive, OFF_SHIFT } from '../flow/floor/states.js';
import { countTime, stretches } from '../flow/model/later.js';
import type { Model } from '../flow/model/model.js';
import { CARRIER, equipmentOf } from '../flow/model/resources.js';
import type { Run } from '../flow/run.js';
import { column, over } from './columns.js';
import type { CrewTime } from './crew-time.js';
import { ruledMinutes } from './crew-time.js';

/** Reads what is claimed: crews, stocks, supplies, carriers and teams, equipment. */
export function observeResources(run: Run, people: CrewTime) {
  const {
      tally,
      overtimeRules,
      shop: { resources, supplies, companions },
    } = run,
    crews = crewsOf(run),
    equipment = equipmentIn(run),
    share = (time: number): number => over(time, run.now - run.observedFrom);
  return {
    /** By crew: engaged person-time over time on shift. */
    crewBusy: column(crews, (crew) => busyShare(run, crew, people)),
    /** Person-minutes of crews on shift, see `crew-time.ts`; and engaged, by crew * buckets + bucket. */
    crewTime: people,
    crewEngagedIn: tally.engagedIn,
    /** By crew: person-minutes of work done again and of repairs. */
    reworkMinutes: column(crews, ({ rework }) => rework),
    /**
     * By overtime rule: how often it was looked at, and worked; minutes worked by rule * buckets + bucket.
     */
    overtimeRules: {
      looked: column(overtimeRules, ({ looked }) => looked),
      worked: column(overtimeRules, ({ worked }) => worked),
      minutesIn: ruledMinutes(run),
    },
    /**
     * By resource: mean stock (of carriers: free) and share of time without stock; 0 for crews and equipment.
     */
    stockMean: column(resources, ({ area }) => share(area)),
    stockOut: column(resources, ({ out }) => share(out)),
    /**
     * By supply: mean on order (of a delivery plan: overdue), least stock, lots received and those of them
     * late; parts that came and that were taken; waits for want of it and their minutes.
     */
    supplies: {
      onOrder: column(supplies, ({ onOrderMinutes }) => share(onOrderMinutes)),
      least: column(supplies, ({ least }) => least),
      lots: column(supplies, ({ lots }) => lots),
      lateLots: column(supplies, ({ lateLots }) => lateLots),
      received: column(supplies, ({ received }) => received),
      used: column(supplies, ({ used }) => used),
      waits: column(supplies, ({ waits }) => waits),
      waitMinutes: column(supplies, ({ waitMinutes }) => waitMinutes),
    },
    /** By carriers and teams: mean number with units, on the way back, without people; holds that ended. */
    kept: {
      held: column(companions, ({ heldMinutes }) => share(heldMinutes)),
      coming: column(companions, ({ comingMinutes }) => share(comingMinutes)),
      unstaffed: column(companions, ({ unstaffedMinutes }) => share(unstaffedMinutes)),
      ended: column(companions, ({ ended }) => ended),
    },
    /** By equipment, minutes of all pieces: in use, in its hours; waits for want of it and their minutes. */
    equipment: {
      used: column(equipment, ({ engaged }) => engaged),
      there: column(equipment, (each) => minutesThere(run, each)),
      waits: column(equipment, ({ shared }) => shared!.waits),
      waitMinutes: column(equipment, ({ shared }) => shared!.waitMinutes),
    },
  };
}

/**
 * What can be a bottleneck, in this order: stations, crews, lanes, carriers, equipment, supplies. The
 * bottleneck is the one with the highest utilisation over the time observed (Hopp & Spearman, Factory
 * Physics, 3rd ed. 2008, ch. 7; quoted from memory).
 */

/**
 * Active time over time on shift: places, people; trucks away and not blocked, by the clock; of carriers,
 * those not free. Arrival banks have no equipment and count 0.
 */
export function utilisations(
  run: Run,
  { crewBusy, equipment }: Pick<ReturnType<typeof observeResources>, 'crewBusy' | 'equipment'>,
  truckBusy: Float64Array,
): Float64Array {
  const { model, shop } = run,
    minutes = run.now - run.observedFrom;
  const stations = shop.stations.map(({ id, account }) =>
    model.stations.isBank[id] ? 0 : stationUtilisation(account),
  );
  const during = (count: (stage: Model) => number): number => countTime(model, run.now, minutes, count);
  const carriers = carriersOf(run).map((each) => {
    const id = shop.resources.indexOf(each);
    return minutes > 0 ? 1 - each.area / during(({ resources }) => resources.amount[id]) : 0;
  });
  return Float64Array.from([
    ...stations,
    ...crewBusy,
    ...truckBusy,
    ...carriers,
    ...equipment.used.map((used, id) => over(used, equipment.there[id])),
    ...shop.supplies.map((supply) => supplyUtilisation(supply, during)),
  ]);
}

/**
 * Of a delivery plan, parts taken over parts that came or lay there; of a supply that is ordered, parts on
 * order over the most that can be, level and lot (by Little 1961 what is used in a lead time over that).
 */
function supplyUtilisation(supply: Supply, during: (count: (stage: Model) => number) => number): number {
  const { id, stock, used, short, onOrderMinutes, isPlanned } = supply;
  if (isPlanned) {
    // What came, and what lay there before, is what was taken and what is left.
    const there = used + stock.free;
    return there > 0 ? used / there : Math.sign(short);
  }
  return Math.min(
    1,
    over(
      onOrderMinutes,
      during(({ supplies: { level, lot } }) => level[id] + lot[id]),
    ),
  );
}

/**
 * Mean active period, minutes of the resource's calendar; 0 if there was none (Roser, Nakano & Tanaka 2001),
 * as for supplies, which have none.
 */
export function activePeriods(run: Run): Float64Array {
  const { stations, lanes } = run.shop,
    all = [...stations, ...crewsOf(run), ...lanes, ...carriersOf(run), ...equipmentIn(run)];
  return Float64Array.from([
    ...all.map(({ activePeriods: periods, activeMinutes: minutes }) => over(minutes, periods)),
    ...run.shop.supplies.map(() => 0),
  ]);
}

/** Person-time engaged over person-time on shift. */
function busyShare(run: Run, crew: Resource, { usual, overtime }: CrewTime): number {
  const { engaged } = crew,
    id = run.shop.resources.indexOf(crew);
  if (run.crewShifts.some((shifts) => shifts.crew === crew)) {
    const there = usual[id] + overtime[id];
    return over(engaged, there);
  }
  return over(engaged, minutesThere(run, crew));
}

/** Of people of a crew that is the same on every shift, or of pieces of equipment, in its hours. */
function minutesThere(run: Run, resource: Resource): number {
  const id = run.shop.resources.indexOf(resource);
  return stretches(run.model, run.observedFrom, run.now).reduce(
    (sum, { model, from, to }) => sum + resource.activeMinutesBetween(from, to) * model.resources.amount[id],
    0,
  );
}

const crewsOf = (run: Run): Resource[] => run.shop.resources.filter(({ isCrew }) => isCrew);
const equipmentIn = ({ model, shop }: Run): Resource[] =>
  equipmentOf(model.resources).map((r) => shop.resources[r]);
const carriersOf = (run: Run): Resource[] => run.shop.resources.filter(({ kind }) => kind === CARRIER);

function stationUtilisation(account: Float64Array): number {
  let active = 0,
    onShift = 0;
  account.forEach((time, state) => {
    if (state !== OFF_SHIFT) onShift += time;
    if (isActive(state)) active += time;
  });
  return over(active, onShift);
}
