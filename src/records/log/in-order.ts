import type { Oddities } from '../oddity.js';
import type { LoggedEvent } from './row-events.js';

/** Rows that are put into order among one another. */
const WINDOW = 5000;

/**
 * Puts events into the order of time, as far as they stand within some 5,000 rows of where they belong. The
 * sort is stable: what happened at one time stays as it was written.
 */
export class InOrder {
  private waiting: LoggedEvent[] = [];
  private isSorted = true;
  private latest = -Infinity;

  constructor(
    private readonly oddities: Oddities,
    private readonly tell: (events: readonly LoggedEvent[]) => void,
  ) {}

  add(event: LoggedEvent, isRowOfItsOwn: boolean): void {
    if (event.at < this.latest) {
      this.isSorted = false;
      if (isRowOfItsOwn) {
        const told = 'rows that are not in order of time are put into it';
        this.oddities.add('out of order', 'mended', event.line, event.object, told);
      }
    } else this.latest = event.at;
    this.waiting.push(event);
    if (this.waiting.length >= 2 * WINDOW) this.pass(WINDOW);
  }

  end(): void {
    this.pass(this.waiting.length);
  }

  private pass(count: number): void {
    // Sorted in runs as it mostly is, this is one pass.
    if (!this.isSorted) this.waiting.sort((a, b) => a.at - b.at);
    this.isSorted = true;
    const rest = this.waiting.splice(count);
    this.tell(this.waiting);
    this.waiting = rest;
  }
}
