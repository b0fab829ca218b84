import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { buildName } from '../../flow/model/orders.js';
import { UNLIMITED, type Model } from '../../flow/model/model.js';
import { prepare } from '../../flow/plan.js';
import {
  BLOCKED,
  CHANGEOVER,
  DOWN,
  IN_MENDING,
  IN_REPAIR,
  IN_SETTLE,
  OFF_SHIFT,
  SHORT_CARRIER,
  SHORT_CREW,
  SHORT_PARTS,
  STARVED,
  UNATTENDED,
  WORKING,
} from '../../flow/floor/states.js';
import {
  AT_DOCK,
  IN_BANK,
  IN_BUFFER,
  IN_TRUCK,
  ON_LOADING,
  ON_ROAD,
  ON_UNLOADING,
  traceUnit,
  type TracePart,
} from '../../flow/trace.js';
import type { Observation } from '../../measure/observe.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import { ACTIVE, type Journey, type JourneyActivity, type JourneyPart } from './activities.js';

const REPLICATION = 1;

/** The build that the planner asks for; undefined: that with the median lead time. */
export interface JourneyAsked {
  readonly build: string | undefined;
}

/** Running number of a build; undefined if there is none of this name. */
export function numberOfBuild(model: Model, build: string): number | undefined {
  const named = model.programme.orders.names.indexOf(build),
    number = /^[1-9]\d*$/.test(build) ? Number(build) : 0;
  if (named >= 0) return named + 1;
  return number > 0 && number <= model.programme.quantity && buildName(model, number) === build
    ? number
    : undefined;
}

/**
 * The way of one unit in the first replication, which is run once more for it; null where there is no such
 * unit, or it did not enter.
 */
export function journey(
  model: Model,
  clock: ProgrammeClock,
  seed: string,
  first: Observation,
  { build }: JourneyAsked,
): Journey | null {
  if (model.programme.quantity >= UNLIMITED) return null;
  const number = build === undefined ? medianUnit(first) : numberOfBuild(model, build);
  const traced = number === undefined ? [] : traceUnit(prepare(model), seed, REPLICATION, number);
  if (number === undefined || traced.length === 0) return null;
  const parts = traced.map((part) => partOf(model, clock, part)),
    from = parts[0].fromMin,
    to = parts[parts.length - 1].toMin;
  const isShipped = first.shippedAt[number - 1] === to;
  return {
    build: buildName(model, number),
    number,
    replication: REPLICATION,
    chosen: build === undefined ? 'median lead time' : 'by name',
    entered: clock.dateTime(from) ?? '',
    shipped: isShipped ? clock.dateTime(to) : null,
    leadDays: (to - from) / MINUTES_PER_DAY,
    parts,
    totals: totals(parts),
    steps: bySteps(parts),
  };
}

/** Of an even number of units shipped the one below the middle, of equal ones the first. */
function medianUnit({ enteredAt, shippedAt }: Observation): number | undefined {
  const leads = Array.from(shippedAt, (time, i) => ({ number: i + 1, lead: time - enteredAt[i] })).filter(
    ({ lead }) => !Number.isNaN(lead),
  );
  leads.sort((a, b) => a.lead - b.lead || a.number - b.number);
  return leads[Math.ceil(leads.length / 2) - 1]?.number;
}

function partOf(
  { steps, stations, lanes, siteNames }: Model,
  clock: ProgrammeClock,
  part: TracePart,
): JourneyPart {
  const { from, to, step } = part,
    station = part.station >= 0 ? part.station : steps.station[step];
  const lane = part.lane >= 0 ? part.lane : station < 0 ? steps.lane[step] : -1;
  return {
    fromMin: from,
    toMin: to,
    from: clock.dateTime(from) ?? '',
    to: clock.dateTime(to) ?? '',
    step: steps.names[step],
    at: lane >= 0 ? lanes.names[lane] : stations.names[station],
    site: part.lane >= 0 ? null : siteNames[lane >= 0 ? lanes.from[lane] : stations.site[station]],
    what: activity(part),
  };
}

function activity({ state, phase }: TracePart): JourneyActivity {
  switch (state) {
    case WORKING:
      return phase === IN_REPAIR || phase === IN_MENDING ? 'repair' : 'work';
    case CHANGEOVER:
      return 'changeover';
    case UNATTENDED:
      return phase === IN_SETTLE ? 'settling' : 'process';
    case SHORT_CREW:
      return 'short of crew';
    case SHORT_PARTS:
      return 'short of parts';
    case SHORT_CARRIER:
      return 'short of carrier';
    case BLOCKED:
      return 'no room ahead';
    case STARVED:
      return 'gathering a lot';
    case DOWN:
      return 'down';
    case OFF_SHIFT:
      return 'off shift';
    case IN_BUFFER:
      return 'waiting for a place';
    case IN_BANK:
      return 'waiting for a truck';
    case ON_LOADING:
      return 'loading';
    case ON_ROAD:
      return 'driving';
    case AT_DOCK:
      return 'waiting for a dock';
    case ON_UNLOADING:
      return 'unloading';
    case IN_TRUCK:
      return 'waiting in the truck';
    default:
      throw new Error(`states of a unit's way are 0 to ${IN_TRUCK}; got ${state}`);
  }
}

function totals(parts: readonly JourneyPart[]): Journey['totals'] {
  const days = new Map<JourneyActivity, number>();
  for (const { what, fromMin, toMin } of parts)
    days.set(what, (days.get(what) ?? 0) + (toMin - fromMin) / MINUTES_PER_DAY);
  return [...days].map(([what, sum]) => ({ what, days: sum })).sort((a, b) => b.days - a.days);
}

/** A lane stands with the site that it leaves from. */
function bySteps(parts: readonly JourneyPart[]): Journey['steps'] {
  const steps = new Map<string, { step: string; site: string; hours: number; activeHours: number }>();
  let site = '';
  for (const part of parts) {
    site = part.site ?? site;
    const row = steps.get(part.step) ?? { step: part.step, site, hours: 0, activeHours: 0 },
      hours = (part.toMin - part.fromMin) / 60;
    steps.set(part.step, row);
    row.hours += hours;
    if (ACTIVE.includes(part.what)) row.activeHours += hours;
  }
  return [...steps.values()];
}
