import { type Estimate, isSame } from '../../src/study/statistics/estimate.js';
import { meanInterval } from '../../src/study/statistics/interval.js';
import { sumOf } from '../../src/study/statistics/sums.js';
import type { Found } from './estimates.js';

/** How often intervals held the truth. Counts are of estimates in studies. */
export interface Held {
  readonly name: string;
  /** Estimates under this name whose truth is not the same in all replications. */
  readonly paths: number;
  /** With an interval; of these, that hold the truth; and its share with its standard error. */
  readonly told: number;
  readonly held: number;
  readonly share: number;
  readonly error: number;
  /** Without: too few to say; the same value in all replications of a study. */
  readonly few: number;
  readonly same: number;
  /** Of events not seen: how many have an upper bound, and with how many of these the truth is above it. */
  readonly bounded: number;
  readonly above: number;
  /** Median of half-width over mean. */
  readonly width: number;
}

/** Estimates of one path, by study. */
interface Row {
  readonly measure: string;
  readonly byStudy: (Estimate | undefined)[];
}

/** Estimates of many studies of one build, to be set against what is true of it. */
export class Coverage {
  private readonly rows = new Map<string, Row>();
  private studies = 0;

  add(found: Iterable<Found>): void {
    for (const { path, measure, estimate } of found) {
      const row = this.rows.get(path) ?? { measure, byStudy: [] };
      row.byStudy[this.studies] = estimate;
      this.rows.set(path, row);
    }
    this.studies++;
  }

  /** @param truth by path; what is not known, or the same in all studies, is left out */
  byPath(truth: ReadonlyMap<string, Estimate>): Held[] {
    return [...this.varying(truth)].map(([path, row]) => this.held(path, [[path, row]], truth));
  }

  /** @param truth as above @param name what is told together, by measure */
  byMeasure(truth: ReadonlyMap<string, Estimate>): Held[] {
    const groups = new Map<string, [string, Row][]>();
    for (const [path, row] of this.varying(truth)) {
      const group = groups.get(row.measure) ?? [];
      group.push([path, row]);
      groups.set(row.measure, group);
    }
    return [...groups].map(([measure, rows]) => this.held(measure, rows, truth));
  }

  private *varying(truth: ReadonlyMap<string, Estimate>): Generator<[string, Row]> {
    for (const [path, row] of this.rows) {
      const known = truth.get(path);
      if (known !== undefined && known.n > 0 && !isSame(known)) yield [path, row];
    }
  }

  /**
   * Studies are independent, estimates of one study are not: the error is that of a ratio over studies,
   * Cochran 1977, sec. 6.3 (from memory).
   */
  private held(name: string, rows: readonly [string, Row][], truth: ReadonlyMap<string, Estimate>): Held {
    const byStudyTold = Array.from({ length: this.studies }, () => ({ told: 0, held: 0 })),
      widths: number[] = [];
    const count = { few: 0, same: 0, bounded: 0, above: 0 };
    for (const [path, { byStudy }] of rows) {
      const right = truth.get(path)?.mean ?? NaN;
      byStudy.forEach((estimate, s) => {
        const study = byStudyTold[s];
        if (estimate === undefined || study === undefined) return;
        const { mean, low, high, needs, most } = estimate;
        if (low !== null && high !== null) {
          study.told++;
          if (low <= right && right <= high) study.held++;
          widths.push((high - low) / 2 / Math.abs(mean));
        } else if (most !== undefined) {
          count.bounded++;
          if (right > most) count.above++;
        } else if (needs !== undefined) count.few++;
        else if (isSame(estimate)) count.same++;
      });
    }
    const told = sumOf(byStudyTold, (each) => each.told),
      held = sumOf(byStudyTold, (each) => each.held),
      share = held / told,
      n = byStudyTold.filter((each) => each.told > 0).length,
      squares = sumOf(byStudyTold, (each) => (each.held - share * each.told) ** 2);
    return {
      name,
      paths: rows.length,
      told,
      held,
      share,
      error: n < 2 ? NaN : Math.sqrt((n / (n - 1)) * squares) / told,
      ...count,
      width: widths.sort((a, b) => a - b)[Math.floor(widths.length / 2)] ?? NaN,
    };
  }
}

/** Values of single replications by path, for the plain Student interval of the same studies. */
export class Plain {
  private readonly all = new Map<string, { readonly measure: string; readonly values: number[] }>();
  private readonly study = new Map<string, { readonly measure: string; readonly values: number[] }>();

  /** A replication by itself: its means are its values. */
  add(found: Iterable<Found>): void {
    for (const { path, measure, estimate } of found) {
      if (estimate.n === 0) continue;
      for (const known of [this.all, this.study]) {
        const row = known.get(path) ?? { measure, values: [] };
        row.values.push(estimate.mean);
        known.set(path, row);
      }
    }
  }

  /** The estimates of the study whose replications these were; the next begins. */
  end(level: number): Found[] {
    const found = [...this.study].map(([path, { measure, values }]) => ({
      path,
      measure,
      estimate: meanInterval(values, level),
    }));
    this.study.clear();
    return found;
  }

  truth(level: number): Map<string, Estimate> {
    return new Map([...this.all].map(([path, { values }]) => [path, meanInterval(values, level)]));
  }
}
