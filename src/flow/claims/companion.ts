import type { Model } from '../model/model.js';
import type { CompanionColumns } from '../model/resources.js';
import type { Resource } from './resource.js';

/** A unit keeps them as bits. */
const MOST_COMPANIONS = 31;

/**
 * What stays with a unit from one step to another: a carrier, or a team, which is some people of a crew.
 * Counted in holds.
 */
export class Companion {
  /** Kept by units now, and carriers on the way back. */
  held = 0;
  coming = 0;
  /** Teams that are with a unit and have no people at present. */
  unstaffed = 0;
  /** Holds that ended, minutes of all holds, and of ways back. */
  ended = 0;
  heldMinutes = NaN;
  comingMinutes = NaN;
  unstaffedMinutes = NaN;
  /** Event sources of those not on the way back. */
  readonly sources: number[] = [];
  /** Of carriers that are there only from some day on. */
  comingSources: number[] = [];
  private since = NaN;

  /** Stands for it on a unit. */
  readonly bit: number;
  /** A unit sent back into the stretch from behind it claims it again at the first of the steps it does. */
  readonly isClaimedAgain: boolean;
  readonly amount: number;
  readonly from: number;
  readonly to: number;
  readonly returnDraw: number;
  readonly returnCalendar: number;

  constructor(
    readonly id: number,
    columns: CompanionColumns,
    readonly resource: Resource,
  ) {
    this.bit = 1 << id;
    this.isClaimedAgain = columns.again[id] === 1;
    this.amount = columns.amount[id];
    this.from = columns.from[id];
    this.to = columns.to[id];
    this.returnDraw = columns.returnDraw[id];
    this.returnCalendar = columns.returnCalendar[id];
    this.since = 0;
    this.clear();
  }

  change(held: number, coming: number, now: number): void {
    this.settle(now);
    this.held += held;
    this.coming += coming;
    if (held < 0) this.ended++;
  }

  /** So many teams more, or fewer, are without people. */
  changeUnstaffed(teams: number, now: number): void {
    this.settle(now);
    this.unstaffed += teams;
  }

  settle(now: number): void {
    this.heldMinutes += this.held * (now - this.since);
    this.comingMinutes += this.coming * (now - this.since);
    this.unstaffedMinutes += this.unstaffed * (now - this.since);
    this.since = now;
  }

  clear(): void {
    this.ended = 0;
    this.heldMinutes = 0;
    this.comingMinutes = 0;
    this.unstaffedMinutes = 0;
  }
}

export function buildCompanions({ companions: columns }: Model, resources: readonly Resource[]): Companion[] {
  if (columns.count > MOST_COMPANIONS)
    throw new RangeError(`carriers and teams: expected ${MOST_COMPANIONS} at most, got ${columns.count}`);
  return columns.names.map((_, s) => {
    const resource = resources[columns.resource[s]];
    resource.hasTeams ||= resource.isCrew;
    return new Companion(s, columns, resource);
  });
}

/** Gives each carrier that takes time to come back an event source, its index in the answer. */
export function furnishCarriers(companions: readonly Companion[]): Companion[] {
  const carriers: Companion[] = [];
  for (const companion of companions)
    if (companion.returnDraw >= 0)
      for (let c = 0; c < companion.resource.amount; c++)
        companion.sources.push(carriers.push(companion) - 1);
  return carriers;
}
