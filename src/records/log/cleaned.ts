import { type Mapping, Names, type UnknownName } from '../names.js';
import { type LeftOutRow, Oddities, type Oddity } from '../oddity.js';
import type { Encoding } from '../table/bytes.js';
import type { ClockOf } from './clocks.js';
import type { FloorEvent } from './event.js';
import { InOrder } from './in-order.js';
import type { LoggedEvent } from './row-events.js';
import { UnitsInside } from './units-inside.js';

/** What is known ahead of a log. Without a scenario any name will do, and times must have an offset. */
export interface Known {
  /** Names of steps and lanes; of stations and lanes. */
  readonly steps?: Iterable<string>;
  readonly stations?: Iterable<string>;
  readonly clockOf?: ClockOf;
  /** Whether two steps may be done on one unit at once. */
  readonly mayBoth?: (step: string, other: string) => boolean;
  readonly names?: Mapping;
}

/** What came of reading a log. */
export interface LogRead {
  /** A row an event, a row a stay, or OCEL 2.0. */
  readonly form: 'events' | 'stays' | 'OCEL 2.0';
  readonly encoding: Encoding;
  /** Without the head and blank lines; `used` of them, all others are among the oddities. */
  readonly rows: number;
  readonly used: number;
  readonly oddities: readonly Oddity[];
  /** Rows that are not used, in the order of the file; of very many only the first. */
  readonly leftOut: readonly LeftOutRow[];
  /** Steps that the scenario does not have, the most frequent first. */
  readonly unknownSteps: readonly UnknownName[];
  /** Columns that are not read. */
  readonly ignored: readonly string[];
  /** First and last time, minutes since 1970-01-01T00:00Z; NaN without events. */
  readonly from: number;
  readonly to: number;
  /** Whether all events were handed on in order of time, not only those of each unit. */
  readonly isInOrder: boolean;
}

/** What is done to events whatever the form of their log: put into order, looked at by unit, counted. */
export class Cleaned {
  rows = 0;
  readonly oddities = new Oddities();
  readonly steps: Names;
  readonly stations: Names;
  private used = 0;
  private readonly inOrder: InOrder;
  private readonly inside: UnitsInside;
  private from = Infinity;
  private to = -Infinity;
  private isInOrder = true;
  private isStays = false;

  constructor({ steps, stations, names, mayBoth }: Known, take: (events: readonly FloorEvent[]) => void) {
    this.steps = new Names(steps, names?.steps);
    this.stations = new Names(stations, names?.stations);
    this.inside = new UnitsInside(this.oddities, mayBoth ?? (() => false));
    this.inOrder = new InOrder(this.oddities, (events) => {
      take(events.filter((event) => this.isTaken(event)));
    });
  }

  /** A row of its own. */
  add(event: LoggedEvent): void {
    this.inOrder.add(event, true);
  }

  /** The events of one row; none where it is left out. */
  addStay(events: readonly LoggedEvent[]): void {
    this.isStays = true;
    if (events.length > 0) this.used++;
    for (const event of events) this.inOrder.add(event, false);
  }

  end(of: Pick<LogRead, 'form' | 'encoding' | 'ignored'>): LogRead {
    this.inOrder.end();
    const isEmpty = this.to < this.from;
    return {
      ...of,
      rows: this.rows,
      used: this.used,
      oddities: this.oddities.list(),
      leftOut: this.oddities.leftOut.toSorted((a, b) => a.line - b.line),
      unknownSteps: this.steps.unknownNames(),
      from: isEmpty ? NaN : this.from,
      to: isEmpty ? NaN : this.to,
      isInOrder: this.isInOrder,
    };
  }

  private isTaken(event: LoggedEvent): boolean {
    if (!this.inside.takes(event, !this.isStays)) return false;
    if (!this.isStays) this.used++;
    if (event.at < this.to) this.isInOrder = false;
    this.from = Math.min(this.from, event.at);
    this.to = Math.max(this.to, event.at);
    return true;
  }
}
