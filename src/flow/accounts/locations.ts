/**
 * Work in process by location (sites, then lanes) and in all: counts and their time integrals. Units only,
 * not sub-assemblies.
 */
export class Locations {
  private readonly inside: Int32Array;
  /** Unit-minutes since the last clearing, by location. */
  readonly area: Float64Array;
  private readonly since: Float64Array;
  /** Units inside, and unit-minutes, counted apart from the locations. */
  total = 0;
  totalArea = Number.NaN;
  private totalSince = Number.NaN;

  constructor(count: number) {
    this.inside = new Int32Array(count);
    this.area = new Float64Array(count);
    this.since = new Float64Array(count);
    this.totalArea = 0;
    this.totalSince = 0;
  }

  /** A unit goes from one location to another; -1 is outside. */
  move(from: number, to: number, now: number): void {
    if (from >= 0) this.add(from, -1, now);
    if (to >= 0) this.add(to, 1, now);
    if (from >= 0 !== to >= 0) this.addTotal(to >= 0 ? 1 : -1, now);
  }

  /** Unit-minutes up to `now`; nothing is settled. */
  totalAreaAt(now: number): number {
    return this.totalArea + this.total * (now - this.totalSince);
  }

  settle(now: number): void {
    for (let id = 0; id < this.inside.length; id++) this.add(id, 0, now);
    this.addTotal(0, now);
  }

  clear(): void {
    this.area.fill(0);
    this.totalArea = 0;
  }

  private addTotal(change: number, now: number): void {
    this.totalArea += this.total * (now - this.totalSince);
    this.totalSince = now;
    this.total += change;
  }

  private add(id: number, change: number, now: number): void {
    this.area[id] += this.inside[id] * (now - this.since[id]);
    this.since[id] = now;
    this.inside[id] += change;
  }
}
