import { ActivePeriods } from '../accounts/active-periods.js';
import { type Calendar, calendarAt } from '../floor/calendar.js';
import type { Route, Step } from '../floor/step.js';
import { HAS_NEEDS } from '../floor/step-flags.js';
import { OWN_SHIFT } from '../model/crews.js';
import type { Model } from '../model/model.js';
import { CREW, EQUIPMENT, type ResourceColumns, STOCK, SUPPLY } from '../model/resources.js';
import type { Run } from '../run.js';
import type { Asked } from './asked.js';
import type { PartDefects } from './joins.js';
import type { Claimant } from './outside.js';
import { SharedEquipment } from './shared-equipment.js';
import type { Supply } from './supply.js';

/** Resources that steps want together, and the places that wait for any of them, in order. */
export class Pool {
  head: Claimant | null = null;
  waiting = 0;
  /** Teams claimed so far. */
  teams = 0;
  listed = false;
}

/**
 * A crew, the stock of a feeder or of a supply, carriers, or equipment: an amount of which steps claim some.
 * `kind` is one of `model.ts`.
 */
export class Resource extends ActivePeriods {
  readonly isCrew: boolean;
  /** A crew or equipment: held while work goes on, and given back. */
  readonly isHeld: boolean;
  free: number;
  /**
   * People of the present shift or, off shift, of the next; pieces of equipment but those that lie under
   * repair; of other things, the amount at the start.
   */
  onHand: number;
  pool: Pool;
  /** Crews of which fewer people may be there later, so that teams may be left without. */
  mayFallShort = false;
  /** Crews out of which teams stay with units. */
  hasTeams = false;
  /** Where work waits for its own shift: the position of the one that is there. */
  position = 0;
  /** Of the stock of a supply: the supply. */
  supply: Supply | null = null;
  /** Of shared equipment: its pieces and the waits for it. */
  shared: SharedEquipment | null = null;
  /** Stocks: the open items of each sub-assembly in it; null if they can have none. */
  partDefects: PartDefects | null = null;
  /** Crews: person-minutes of work done again and of repairs, counted when it begins. */
  rework = NaN;
  /** Scan number at which an earlier request lacked it. */
  scarceAt = 0;
  /** Since the start of the run: a request, a team or work under way was short of it. */
  everLacked = false;
  /**
   * Crews and equipment: minutes engaged while on shift, of all people or pieces. Stocks and carriers:
   * minutes without a free one, and minutes of the free ones.
   */
  engaged = NaN;
  out = NaN;
  area = NaN;
  private since = NaN;

  constructor(
    readonly name: string,
    readonly kind: number,
    /** Headcount, of the largest shift; stock at the start; carriers or pieces of equipment there are. */
    public amount: number,
    calendar: Calendar | null,
    readonly feeder: Route | null,
  ) {
    super(calendar);
    this.isCrew = kind === CREW;
    this.isHeld = this.isCrew || kind === EQUIPMENT;
    this.free = amount;
    this.onHand = amount;
    if (kind === EQUIPMENT) this.shared = new SharedEquipment();
    this.pool = new Pool();
    this.since = 0;
    this.clear(0);
  }

  /** Some are given back (more than 0) or taken. */
  change(amount: number, now: number): void {
    this.settle(now);
    const before = this.free;
    this.free += amount;
    if (this.kind === STOCK || this.kind === SUPPLY) return;
    if (before > 0 && this.free === 0) this.beginActive(now);
    else if (before === 0 && this.free > 0) this.finishActive(now);
  }

  /** People engaged at present. */
  get engagedNow(): number {
    return this.onHand - this.free;
  }

  /** Another shift: so many people are there. No more than these may be engaged. */
  staff(people: number, now: number): void {
    this.settle(now);
    const wasActive = this.free === 0 && this.onHand > 0;
    this.free += people - this.onHand;
    this.onHand = people;
    const isActive = this.free === 0 && people > 0;
    if (isActive && !wasActive) this.beginActive(now);
    else if (wasActive && !isActive) this.finishActive(now);
  }

  /** Person-minutes engaged up to now, without closing the account. */
  engagedUpTo(now: number): number {
    const { engaged, engagedNow } = this;
    return engagedNow > 0 ? engaged + engagedNow * this.activeMinutesBetween(this.since, now) : engaged;
  }

  settle(now: number): void {
    if (now === this.since) return;
    if (this.isHeld) this.engaged = this.engagedUpTo(now);
    else {
      this.area += this.free * (now - this.since);
      if (this.free === 0) this.out += now - this.since;
    }
    this.shared?.settle(now);
    this.since = now;
  }

  /** Observation starts afresh. */
  clear(now: number): void {
    this.clearActive(now);
    this.engaged = 0;
    this.out = 0;
    this.area = 0;
    this.rework = 0;
    this.shared?.clear();
  }
}

/** People, or sub-assemblies, become free. */
export function give(run: Run, resource: Resource, amount: number): void {
  resource.change(amount, run.now);
  if (resource.pool.waiting > 0) run.listMatch(resource.pool);
}

/** Builds all resources; feeders are told of the stocks that they feed. */
export function buildResources(
  { resources: columns, routes: { stock }, later }: Model,
  calendars: readonly Calendar[],
  routes: readonly Route[],
): Resource[] {
  return columns.names.map((name, r) => {
    const feeder = routes.find(({ id }) => stock[id] === r) ?? null,
      calendar = calendarAt(calendars, columns.calendar[r]),
      resource = new Resource(name, columns.kind[r], columns.amount[r], calendar, feeder);
    if (feeder !== null) feeder.stock = resource;
    resource.mayFallShort = resource.isCrew && mayFallShort(columns, later, r);
    return resource;
  });
}

/** Whether fewer people of a crew may be there after more: by shifts, by absence, by a change on a date. */
function mayFallShort(columns: ResourceColumns, later: Model['later'], crew: number): boolean {
  const shifts = columns.shifts[crew],
    amounts = [...later.map(({ parts }) => parts.resources ?? columns), columns].map(
      ({ amount }) => amount[crew],
    );
  if (shifts === null) return amounts.some((count, i) => count > amounts[i + 1]);
  const { people, absenceDraw, handOver } = shifts;
  return absenceDraw >= 0 || handOver === OWN_SHIFT || people.some((count) => count !== people[0]);
}

/**
 * Resources that a step wants together share a pool; a step that waits for own parts alone has one of its
 * own.
 */
export function joinPools(
  steps: readonly Step[],
  kits: readonly (Asked | null)[],
  resources: readonly Resource[],
): void {
  const wantedBy = ({ needs, companions, teams }: Asked): Resource[] =>
    [...needs, ...companions, ...teams].map(({ resource }) => resource);
  for (const asked of [...steps.map((step) => step.asked), ...kits]) {
    if (asked === null) continue;
    const [first, ...others] = wantedBy(asked);
    for (const { pool } of others)
      if (pool !== first.pool)
        for (const resource of resources) if (resource.pool === pool) resource.pool = first.pool;
  }
  for (const { flags, asked, rest, ahead } of steps) {
    if ((flags & HAS_NEEDS) === 0) continue;
    asked.pool = wantedBy(asked)[0]?.pool ?? new Pool();
    for (const part of [rest, ahead]) if (part !== null) part.pool = asked.pool;
  }
  for (const kit of kits) if (kit !== null) kit.pool = kit.needs[0].resource.pool;
}
