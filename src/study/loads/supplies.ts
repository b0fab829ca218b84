import { meanDraw } from '../capacity/means.js';
import { rowsOf } from '../lists.js';
import { type Flow, type Load, stepsWhere, widestGap } from './load.js';

/**
 * Supplies of which units have to wait for a lot, by arithmetic: their lots are what units then go on by. A
 * supply that is always in stock moves nothing, however large its lots are.
 */
export function supplyLoads(flow: Flow): Load[] {
  const { model, asks, perDay } = flow,
    { supplies, resources, steps } = model;
  return Array.from(supplies.resource, (resource, id) => ({ resource, id })).flatMap(
    ({ resource, id }): Load[] => {
      const aUnit = asks.taken[resource],
        aDay = aUnit * perDay,
        name = resources.names[resource],
        isPlanned = supplies.level[id] < 0;
      if (aDay === 0 || !(isPlanned ? isShort(flow, id) : isOrderedLate(flow, id, aDay))) return [];
      const cycleDays = isPlanned ? widestGap(flow, supplies.planTimes[id]) : supplies.lot[id] / aDay;
      const [step = 0] = stepsWhere(flow, (each) =>
        rowsOf(steps.needStart, each).some((need) => steps.needResource[need] === resource),
      );
      return cycleDays > 0
        ? [
            {
              what: `${isPlanned ? 'deliveries' : 'lots'} of ${name}`,
              units: cycleDays * perDay,
              cycleDays,
              isTimed: isPlanned,
              underWayDays: 0,
              step,
            },
          ]
        : [];
    },
  );
}

/** Lateness of a lot where it is late; 0 if none ever is. */
const late = ({ model, model: { supplies } }: Flow, id: number): number =>
  supplies.lateChance[id] > 0 ? meanDraw(model, supplies.lateByDraw[id]) : 0;

/** The plan of deliveries falls behind the plan of releases at some date of it, each lot taken to be late. */
function isShort(flow: Flow, id: number): boolean {
  const { model, asks, from, to, released } = flow,
    { supplies, resources } = model,
    resource = supplies.resource[id],
    lots = supplies.planLots[id],
    times = supplies.planTimes[id].map((time) => time + late(flow, id)),
    wanted = released(times);
  let stock = resources.amount[resource];
  for (let i = 0; i < times.length && times[i] <= to; i++) {
    if (times[i] >= from && stock < asks.taken[resource] * wanted[i] - 1e-6) return true;
    stock += lots[i];
  }
  return stock < asks.taken[resource] * released([to])[0] - 1e-6;
}

/** More is taken between an order and its arrival than the level that it is ordered at. */
const isOrderedLate = (flow: Flow, id: number, aDay: number): boolean => {
  const { model, daily } = flow,
    { supplies } = model;
  return (
    (aDay * (meanDraw(model, supplies.leadDraw[id]) + late(flow, id))) / daily.of(-1) >
    supplies.level[id] + 1e-9
  );
};
