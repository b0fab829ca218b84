/**
 * Work in process by location (sites, then lanes) and in all: counts and their time integrals. Units only,
 * not sub-assemblies.
 */
export class Locations {
  /** By location; the total is counted apart, behind them. */
  private readonly inside: Int32Array;
  private readonly areas: Float64Array;
  private readonly since: Float64Array;
  /** Unit-minutes since the last clearing, by location. */
  readonly area: Float64Array;

  constructor(private readonly count: number) {
    this.inside = new Int32Array(count + 1);
    this.areas = new Float64Array(count + 1);
    this.since = new Float64Array(count + 1);
    this.area = this.areas.subarray(0, count);
  }

  /** Units inside. */
  get total(): number {
    return this.inside[this.count];
  }

  /** Their unit-minutes since the last clearing. */
  get totalArea(): number {
    return this.areas[this.count];
  }

  /** A unit goes from one location to another; -1 is outside. */
  move(from: number, to: number, now: number): void {
    if (from >= 0) this.add(from, -1, now);
    if (to >= 0) this.add(to, 1, now);
    if (from >= 0 !== to >= 0) this.add(this.count, to >= 0 ? 1 : -1, now);
  }

  /** Unit-minutes up to `now`; nothing is settled. */
  totalAreaAt(now: number): number {
    return this.totalArea + this.total * (now - this.since[this.count]);
  }

  settle(now: number): void {
    for (let id = 0; id < this.inside.length; id++) this.add(id, 0, now);
  }

  clear(): void {
    this.areas.fill(0);
  }

  private add(id: number, change: number, now: number): void {
    this.areas[id] += this.inside[id] * (now - this.since[id]);
    this.since[id] = now;
    this.inside[id] += change;
  }
}
