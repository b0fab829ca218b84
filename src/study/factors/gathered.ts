import { baseWindow, type ComparedVariant, type Measure, measuresOf } from '../compare/measures.js';
import { defined } from '../lists.js';
import type { Window } from '../programme/judged-window.js';
import type { Reading } from '../sample/reading.js';

/** What is kept of a replication: its measures, and how it ended. */
export interface Row extends Pick<Reading, 'replication' | 'outcome' | 'endedAt' | 'lastUnitDay'> {
  readonly values: readonly number[];
}

/**
 * Readings as they come, the base's first. They are kept until the weeks are known in which it is judged;
 * from then on only measures are, so that many combinations need little memory.
 */
export class Gathered {
  private readonly first: Reading[] = [];
  private readonly rows: Row[][];
  private known: { readonly window: Window | null; readonly measures: readonly Measure[] } | undefined;

  constructor(readonly variants: readonly ComparedVariant[]) {
    this.rows = variants.map(() => []);
  }

  take(reading: Reading, index: number): void {
    if (index === 0) this.first.push(reading);
    else {
      this.settle();
      this.rows[index]?.push(this.rowOf(reading, index));
    }
  }

  /** By variant, in the order of the replications. */
  all(): readonly (readonly Row[])[] {
    this.settle();
    return this.rows;
  }

  /** What the variants are compared by, and the weeks in which the base is judged. */
  settle(): { readonly window: Window | null; readonly measures: readonly Measure[] } {
    if (this.known === undefined) {
      const base = defined(this.variants[0]),
        window = baseWindow(base, this.first);
      this.known = { window, measures: measuresOf(base, window) };
      this.rows[0]?.push(...this.first.map((reading) => this.rowOf(reading, 0)));
      this.first.length = 0;
    }
    return this.known;
  }

  private rowOf(reading: Reading, index: number): Row {
    const { replication, outcome, endedAt, lastUnitDay } = reading,
      variant = defined(this.variants[index]),
      { measures } = defined(this.known);
    return {
      ...{ replication, outcome, endedAt, lastUnitDay },
      values: measures.map(({ of }) => of(variant)(reading)),
    };
  }
}
