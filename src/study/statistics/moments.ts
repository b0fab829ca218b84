/**
 * Number, mean, variance and skewness of values that come one at a time and are not kept, in constant memory
 * (Welford 1962, Technometrics 4(3), 419-420; the third moment: Pébay 2008, Sandia report SAND2008-6212, eq.
 * 2.3 with one value added; from memory), and how many of them are the least or the greatest. Values that are
 * not finite are left out.
 */
export class Moments {
  private count = 0;
  private middle = 0;
  private squares = 0;
  private cubes = 0;
  private readonly least = new End(Infinity);
  private readonly greatest = new End(-Infinity);

  add(value: number): void {
    if (!Number.isFinite(value)) return;
    const before = value - this.middle,
      n = ++this.count,
      step = before / n;
    this.middle += step;
    this.cubes += before * step * step * (n - 1) * (n - 2) - 3 * step * this.squares;
    this.squares += before * (value - this.middle);
    if (value <= this.least.value) this.least.take(value);
    if (value >= this.greatest.value) this.greatest.take(value);
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

  /** Third central moment over the second to the power 3/2, both by n; 0 where values do not differ. */
  get skewness(): number {
    const { count, squares, cubes } = this;
    return squares > 0 ? (Math.sqrt(count) * cubes) / (squares * Math.sqrt(squares)) : 0;
  }

  /** Greatest less least value; 0 of none. */
  get range(): number {
    return this.count === 0 ? 0 : this.greatest.value - this.least.value;
  }

  /** The largest of them without its sign; 0 of none. */
  get magnitude(): number {
    return this.count === 0 ? 0 : Math.max(Math.abs(this.least.value), Math.abs(this.greatest.value));
  }

  /**
   * How many values carry the mean, by its distance d from the least value, or from the greatest where that
   * is nearer: n d^2 / (d^2 + m2), m2 the second central moment, which is the effective sample size (sum w)^2
   * / sum w^2 of Kish 1965 (Survey Sampling, sec. 11.7; from memory) of the distances w from there. Of n
   * values 0 or 1 these are the ones, or the zeros.
   */
  get carrying(): number {
    const { count, middle, squares } = this;
    if (!(squares > 0)) return count;
    const distance = Math.min(middle - this.least.value, this.greatest.value - middle);
    return (count * distance * distance) / (distance * distance + squares / count);
  }

  /**
   * How many differ from the least value, or from the greatest, whichever are fewer. What is rarely seen is
   * mostly 0, what rarely fails mostly 1: so many values carry all that is known.
   */
  get unlike(): number {
    return this.count - Math.max(this.least.times, this.greatest.times);
  }
}

/** The least or the greatest value so far, and how often it came. */
class End {
  times = 0;
  constructor(public value: number) {}

  take(value: number): void {
    this.times = value === this.value ? this.times + 1 : 1;
    this.value = value;
  }
}
