import type { Model } from '../model/model.js';
import type { SupplyColumns } from '../model/resources.js';
import type { Resource } from './resource.js';

export interface SupplyLot {
  readonly at: number;
  readonly units: number;
  readonly isLate: boolean;
}

/** A bought-in part: its stock, the lots on their way, and its accounts. */
export class Supply {
  level = 0;
  lot = 0;
  /** Stock and orders less the demand that waits; kept for supplies that are ordered. */
  position: number;
  /**
   * Lots on their way, the next to come last. Lead times may cross. Of a delivery plan: those that are
   * overdue.
   */
  readonly coming: SupplyLot[] = [];
  /** Next delivery of the plan. */
  planned = 0;
  /** Units on order; of a delivery plan, overdue. */
  onOrder = 0;
  /** Since the start of the run, for the audit. */
  unitsReceived = 0;
  unitsUsed = 0;
  /** Requests that lack it now. */
  short = 0;
  // Accounts of the time observed.
  least: number;
  lots = 0;
  lateLots = 0;
  /** Waits begun for want of it; minutes that requests lacked it; unit-minutes on order. */
  waits = 0;
  waitMinutes = NaN;
  /** Parts that came and that were taken. */
  received = 0;
  used = 0;
  onOrderMinutes = NaN;
  private since = NaN;

  constructor(
    readonly id: number,
    public columns: SupplyColumns,
    readonly stock: Resource,
  ) {
    this.goBy(columns);
    this.position = this.least = stock.amount;
    this.since = 0;
    this.clear();
  }

  /** How it is ordered, from now on. */
  goBy(columns: SupplyColumns): void {
    this.columns = columns;
    this.level = columns.level[this.id];
    this.lot = columns.lot[this.id];
  }

  get isPlanned(): boolean {
    return this.level < 0;
  }

  /** A delivery is due, or a lot on its way. */
  get hasMore(): boolean {
    return this.coming.length > 0 || this.planned < this.columns.planTimes[this.id].length;
  }

  setOut(lot: SupplyLot, now: number): void {
    this.settle(now);
    this.onOrder += lot.units;
    const { coming } = this;
    coming.push(lot);
    // Of lots that come at one time the one ordered first is the first to come.
    for (let i = coming.length - 1; i > 0 && coming[i - 1].at <= lot.at; i--)
      [coming[i - 1], coming[i]] = [coming[i], coming[i - 1]];
  }

  receive(units: number, isLate: boolean): void {
    this.lots++;
    if (isLate) this.lateLots++;
    this.unitsReceived += units;
    this.received += units;
  }

  use(units: number): void {
    this.unitsUsed += units;
    this.used += units;
    this.least = Math.min(this.least, this.stock.free);
  }

  /** A request begins to lack it (1), or does no longer (-1). */
  changeLacking(change: number, now: number): void {
    this.settle(now);
    this.short += change;
    if (change > 0) this.waits++;
  }

  settle(now: number): void {
    this.onOrderMinutes += this.onOrder * (now - this.since);
    this.waitMinutes += this.short * (now - this.since);
    this.since = now;
  }

  /** Accounts begin again. */
  clear(): void {
    this.least = this.stock.free;
    this.lots = 0;
    this.lateLots = 0;
    this.waits = 0;
    this.received = 0;
    this.used = 0;
    this.waitMinutes = 0;
    this.onOrderMinutes = 0;
  }
}

export const buildSupplies = ({ supplies: columns }: Model, resources: readonly Resource[]): Supply[] =>
  Array.from(columns.resource, (r, id) => (resources[r].supply = new Supply(id, columns, resources[r])));
