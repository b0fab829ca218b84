import type { Resource } from '../flow/claims/resource.js';
import { isActive, OFF_SHIFT } from '../flow/floor/states.js';
import { CARRIER } from '../flow/model/resources.js';
import type { Run } from '../flow/run.js';
import { over } from './columns.js';
import type { CrewTime } from './crew-time.js';

/**
 * What can be a bottleneck, in this order: stations, crews, lanes, carriers. The bottleneck is the one with
 * the highest utilisation over the time observed (Hopp & Spearman, Factory Physics, 3rd ed. 2008, ch. 7;
 * quoted from memory).
 */

/**
 * Active time over time on shift: places, people; trucks away and not blocked, by the clock; of carriers,
 * those not free. Arrival banks have no equipment and count 0.
 */
export function utilisations(run: Run, people: CrewTime): Float64Array {
  const { model, shop } = run,
    minutes = run.now - run.observedFrom;
  const stations = shop.stations.map(({ id, account }) =>
    model.stations.isBank[id] ? 0 : stationUtilisation(account),
  );
  const crews = crewsOf(run).map((crew) => crewBusy(run, crew, people));
  const lanes = shop.lanes.map(({ busy, trucks }) => over(busy, minutes * trucks.length));
  const carriers = carriersOf(run).map(({ area, amount }) =>
    minutes > 0 ? 1 - area / (minutes * amount) : 0,
  );
  return Float64Array.from([...stations, ...crews, ...lanes, ...carriers]);
}

/**
 * Mean active period, minutes of the resource's calendar; 0 if there was none (Roser, Nakano & Tanaka 2001).
 */
export function activePeriods(run: Run): Float64Array {
  const all = [...run.shop.stations, ...crewsOf(run), ...run.shop.lanes, ...carriersOf(run)];
  return Float64Array.from(all, ({ activePeriods: periods, activeMinutes: minutes }) =>
    over(minutes, periods),
  );
}

/** Person-time engaged over person-time on shift. */
export function crewBusy(run: Run, crew: Resource, { usual, overtime }: CrewTime): number {
  const { amount, engaged } = crew;
  if (run.crewShifts.some((shifts) => shifts.crew === crew)) {
    const id = run.shop.resources.indexOf(crew),
      there = usual[id] + overtime[id];
    return over(engaged, there);
  }
  return over(engaged, crew.activeMinutesBetween(run.observedFrom, run.now) * amount);
}

export const crewsOf = (run: Run): Resource[] => run.shop.resources.filter(({ isCrew }) => isCrew);
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
