import type { Clock } from './clock.js';
import type { Plan } from './plan.js';

/** Work in process by location (sites, then lanes) and in all: counts and their time integrals. Units only, not sub-assemblies. */
export class Locations {
  readonly inside: Int32Array;
  total = 0;
  /** Unit-minutes since the last clearing, by location. */
  readonly area: Float64Array;
  private readonly since: Float64Array;
  private readonly integral = new Float64Array(1);
  private readonly totalSince = new Float64Array(1);

  constructor(plan: Plan, private readonly clock: Clock) {
    this.inside = new Int32Array(plan.locationCount);
    this.area = new Float64Array(plan.locationCount);
    this.since = new Float64Array(plan.locationCount);
  }

  /** Unit-minutes in all, counted apart from the locations. */
  get totalArea(): number {
    return this.integral[0];
  }

  /** A unit goes from one location to another; -1 is outside. */
  move(from: number, to: number): void {
    if (from >= 0) this.add(from, -1);
    if (to >= 0) this.add(to, 1);
    const change = (to >= 0 ? 1 : 0) - (from >= 0 ? 1 : 0);
    if (change === 0) return;
    this.addTotal(change);
  }

  settleAll(): void {
    for (let id = 0; id < this.inside.length; id++) this.add(id, 0);
    this.addTotal(0);
  }

  clear(): void {
    this.area.fill(0);
    this.integral[0] = 0;
  }

  private addTotal(change: number): void {
    const now = this.clock.now;
    this.integral[0] += this.total * (now - this.totalSince[0]);
    this.totalSince[0] = now;
    this.total += change;
  }

  private add(id: number, change: number): void {
    const now = this.clock.now;
    this.area[id] += this.inside[id] * (now - this.since[id]);
    this.since[id] = now;
    this.inside[id] += change;
  }
}
