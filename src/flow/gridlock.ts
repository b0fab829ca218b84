import { lackedOf } from './claims/carriers.js';
import { lacking } from './claims/claims.js';
import { mayArrive } from './claims/supplies.js';
import { SHORT_CARRIER, SHORT_PARTS } from './floor/states.js';
import type { Unit } from './floor/unit.js';
import { mayGoOn } from './interruptions/crews.js';
import { mayComeUp } from './interruptions/failures.js';
import type { Run } from './run.js';

/**
 * Whether nothing moves any more: only lots of supplies, changes of shift, looks at overtime rules, failures
 * and repairs are ahead, and nobody waits for one of them.
 */
export function isStill(run: Run): boolean {
  return (
    run.queue.size === run.supplyEvents + run.idleEvents + run.disruptions.scheduled &&
    !mayArrive(run) &&
    !mayGoOn(run) &&
    !mayComeUp(run)
  );
}

/** One unit or sub-assembly that cannot go on: where it stands and what it waits for. */
export interface Stuck {
  readonly number: number;
  /** Name of the route: the unit's, or the feeder of a sub-assembly. */
  readonly route: string;
  readonly where: string;
  readonly waitsFor: string;
  /**
   * `room` at a station or lane; `pulse`: the station that holds up the pulse line; `crew` or `parts` of a
   * step; `supply`: parts of which no more will come; `carrier`: these carriers; `lot`, `truck`: more units
   * or a truck.
   */
  readonly kind: 'room' | 'pulse' | 'crew' | 'parts' | 'supply' | 'carrier' | 'lot' | 'truck';
  /**
   * Carriers, and crews of teams, that stay with it, and those that it waits for; left out where there are
   * none.
   */
  readonly keeps?: readonly string[];
  readonly lacks?: readonly string[];
}

/** Rule 16: who waits for whom when nothing can move. In order of build number. */
export function stuckUnits(run: Run): Stuck[] {
  return run.units.all
    .filter(({ alive }) => alive)
    .map((unit) => describe(run, unit))
    .sort((a, b) => a.number - b.number);
}

function describe(run: Run, unit: Unit): Stuck {
  const { number, place, truck, step } = unit,
    keeps = run.shop.companions
      .filter(({ bit }) => (unit.companionBits & bit) !== 0)
      .map(({ resource }) => resource.name),
    base = { number, route: step.route.name, ...(keeps.length > 0 ? { keeps } : {}) };
  const wanted = step.station?.name ?? step.lane!.name;
  if (place === null) {
    const queued = step.buffer.holds(unit),
      where = truck !== null ? truck.lane.name : queued ? `ahead of ${wanted}` : 'outside';
    return { ...base, where, waitsFor: wanted, kind: queued && step.lane !== null ? 'truck' : 'room' };
  }
  const where = place.station.name;
  const { line } = place.station,
    held =
      line !== null && place.isDone && place.station === line.last && !line.waitsForRoom
        ? line.holdingUp
        : null;
  if (held !== null) return { ...base, where, waitsFor: held.station.name, kind: 'pulse' };
  if (place.isDone) return { ...base, where, waitsFor: wanted, kind: 'room' };
  if (place.station.lotGathered > 0)
    return { ...base, where, waitsFor: `more units for a lot at ${where}`, kind: 'lot' };
  const at = place.sides.find(({ isGoing }) => isGoing) ?? place,
    { unit: asking } = at,
    wants = asking!.step;
  const ended = wants.supplyNeeds.find(
    ({ resource, amount }) => resource.free < amount && !resource.supply!.hasMore,
  );
  if (ended !== undefined) return { ...base, where, waitsFor: ended.resource.name, kind: 'supply' };
  const short = lacking(run, at, false),
    lacked = lackedOf(asking!, wants),
    lacks = lacked.map(({ name }) => name);
  if (short === SHORT_CARRIER)
    return {
      ...base,
      where,
      waitsFor: lacked.flatMap(({ name, isCrew }) => (isCrew ? [] : [name])).join(' and '),
      kind: 'carrier',
      lacks,
    };
  return {
    ...base,
    where,
    waitsFor: `the needs of step ${wants.name}`,
    kind: short === SHORT_PARTS ? 'parts' : 'crew',
    ...(lacks.length > 0 ? { lacks } : {}),
  };
}
