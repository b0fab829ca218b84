import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { prepare } from '../../flow/plan.js';
import { type TracePart, traceUnit } from '../../flow/trace.js';
import type { Observation } from '../../measure/observe.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import { ACTIVE, activity, type JourneyActivity } from './activities.js';

/** The way of one unit in one replication, from its entry to its shipping. */
export interface Journey {
  readonly build: string;
  readonly number: number;
  readonly replication: number;
  /** Why this unit. */
  readonly chosen: 'by name' | 'median lead time';
  readonly entered: string;
  /** Null: it was not shipped, and the journey ends with the run. */
  readonly shipped: string | null;
  readonly leadDays: number;
  /** One after the other without a gap: each begins where the one before ends. */
  readonly parts: readonly JourneyPart[];
  /** Days by activity, the longest first. */
  readonly totals: readonly { readonly what: JourneyActivity; readonly days: number }[];
  /**
   * By step in the order in which it came to them, all visits together: hours from the wait for it to its
   * end, and those in which something was done to the unit or it was on the road.
   */
  readonly steps: readonly {
    readonly step: string;
    readonly site: string;
    readonly hours: number;
    readonly activeHours: number;
  }[];
}
export interface JourneyPart {
  /** Minutes since the programme's start, and local dates and times. */
  readonly fromMin: number;
  readonly toMin: number;
  readonly from: string;
  readonly to: string;
  /** Step done, or waited for. */
  readonly step: string;
  /** Station or lane where it is; a unit in a buffer is ahead of the station. */
  readonly at: string;
  /** Null on a lane. */
  readonly site: string | null;
  readonly what: JourneyActivity;
}

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
