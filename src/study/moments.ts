/**
 * Number, mean and variance of values that come one at a time and are not kept (Welford 1962, Technometrics 4(3), 419-420). Values
 * that are not finite are left out.
 */
export class Moments {
  private count = 0;
  private middle = 0;
  private squares = 0;

  add(value: number): void {
    if (!Number.isFinite(value)) return;
    const before = value - this.middle;
    this.count++;
    this.middle += before / this.count;
    this.squares += before * (value - this.middle);
  }

  /** Values seen. */
  get n(): number {
    return this.count;
  }

  /** 0 of none. */
  get mean(): number {
    return this.middle;
  }

  /** Sample variance, by n - 1; NaN of fewer than two. */
  get variance(): number {
    return this.count > 1 ? this.squares / (this.count - 1) : NaN;
  }
}
