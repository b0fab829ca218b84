import { defined } from '../../lists.js';
import { mean, sum } from '../../statistics/sums.js';
import type { Trials } from '../search/trials.js';
import { ordered, Tried } from '../search/tried.js';
import { type Layout } from '../spots.js';

/** What a case is measured by: so many times what its layout ships in it, or where that is null `times`. */
export interface Yardstick {
  /** By case. */
  readonly of: readonly Layout[] | null;
  readonly times: number;
}

/**
 * Layouts tried in all cases, in the same replications. A layout is worth what it ships against the yardstick
 * of the case, as a share: in the case where that is least, or in the mean over the cases.
 */
export class CaseTrials extends Tried {
  readonly most: number;

  constructor(
    private readonly cases: readonly Trials[],
    private readonly yardstick: Yardstick,
    private readonly by: 'worst' | 'mean',
  ) {
    super();
    this.most = defined(cases[0]).most;
  }

  async run(layouts: readonly Layout[], to = this.most): Promise<void> {
    const { of } = this.yardstick;
    await Promise.all(
      this.cases.map((each, c) => each.run(of === null ? layouts : [defined(of[c]), ...layouts], to)),
    );
  }

  /** Of the case where it is worth least by all that is known of it. */
  values(layout: Layout): readonly number[] {
    const n = this.known(layout),
      shares = this.cases.map((each, c) => {
        const whole = this.whole(c, n);
        return each
          .values(layout)
          .slice(0, n)
          .map((rate) => shareOf(rate, whole));
      });
    if (this.by === 'mean')
      return defined(shares[0]).map((_, r) => mean(shares.map((row) => defined(row[r]))));
    return shares.reduce((least, row) => (sum(row) < sum(least) ? row : least));
  }

  mean(layout: Layout, over = this.most): number {
    const shares = this.cases.map((each, c) => shareOf(each.mean(layout, over), this.whole(c, over)));
    return this.by === 'mean' ? mean(shares) : Math.min(...shares);
  }

  ranked(): Layout[] {
    return ordered(
      defined(this.cases[0])
        .ranked()
        .filter((layout) => this.known(layout) >= this.most),
      (each) => this.mean(each),
    );
  }

  get tried(): number {
    return defined(this.cases[0])
      .layouts()
      .filter((layout) => this.known(layout) > 0).length;
  }

  used(layout: Layout): number[] {
    return largest(this.cases.map((each) => each.used(layout)));
  }

  lacking(layout: Layout): number[] {
    return largest(this.cases.map((each) => each.lacking(layout)));
  }

  inside(layout: Layout): number[] {
    return largest(this.cases.map((each) => each.inside(layout)));
  }

  /** Replications of a layout that are known in every case. */
  private known(layout: Layout): number {
    const { of } = this.yardstick;
    return Math.min(
      ...this.cases.map((each, c) =>
        Math.min(each.values(layout).length, each.values(of?.[c] ?? layout).length),
      ),
    );
  }

  /** What stands for 1 in a case, in the unit of the study. */
  private whole(c: number, over: number): number {
    const { of, times } = this.yardstick;
    return of === null ? times : times * defined(this.cases[c]).mean(defined(of[c]), over);
  }
}

/** Where nothing is to be had, nothing is lost: a case that stands still whatever is built. */
const shareOf = (rate: number, whole: number): number => (whole > 0 ? rate / whole : 1);

/** The largest of each spot. */
export const largest = (layouts: readonly Layout[]): number[] =>
  defined(layouts[0]).map((_, s) => Math.max(...layouts.map((layout) => defined(layout[s]))));
