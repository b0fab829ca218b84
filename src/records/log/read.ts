import { type Mapping, mappedBy, Names, type UnknownName } from '../names.js';
import { Oddities, type Oddity } from '../oddity.js';
import { Decoder, type Encoding } from '../table/bytes.js';
import type { Cells } from '../table/cells.js';
import { RowSplitter } from '../table/rows.js';
import type { StrokeOrder } from '../table/times.js';
import { Unreadable } from '../unreadable.js';
import { type ClockOf, Clocks } from './clocks.js';
import { columnsOf } from './columns.js';
import type { FloorEvent } from './event.js';
import { InOrder } from './in-order.js';
import { eventOf, type LoggedEvent, type RowReading } from './row-events.js';
import { Stays } from './stays.js';
import { type Open, strokeOrder } from './stroke-order.js';
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
  readonly form: 'events' | 'stays';
  readonly encoding: Encoding;
  /** Without the head and blank lines; `used` of them, all others are among the oddities. */
  readonly rows: number;
  readonly used: number;
  readonly oddities: readonly Oddity[];
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

/**
 * Reads a floor log in a form of CSV, a row an event or a row a stay, in bounded memory.
 * @param take gets the events in batches, in order of time as far as the file allows
 * @param progress is told bytes and rows read, part by part
 * @throws Unreadable where the file as a whole cannot be read
 */
export async function readLog(
  open: Open,
  known: Known,
  take: (events: readonly FloorEvent[]) => void,
  progress?: (bytes: number, rows: number) => void,
): Promise<LogRead> {
  const decoder = new Decoder(),
    rows = new LogRows(known, await strokeOrder(open), take),
    splitter = new RowSplitter((cells, line) => {
      rows.take(cells, line);
    });
  let bytes = 0;
  for await (const part of open()) {
    splitter.push(decoder.push(part));
    bytes += part.length;
    progress?.(bytes, rows.count);
  }
  splitter.push(decoder.end());
  splitter.end();
  return rows.end(decoder.encoding);
}

class LogRows {
  count = 0;
  private used = 0;
  private readonly oddities = new Oddities();
  private readonly steps: Names;
  private readonly inOrder: InOrder;
  private readonly inside: UnitsInside;
  private reading: RowReading | undefined;
  private stays: Stays | undefined;
  private from = Infinity;
  private to = -Infinity;
  private isInOrder = true;

  constructor(
    private readonly known: Known,
    private readonly strokes: StrokeOrder | undefined,
    take: (events: readonly FloorEvent[]) => void,
  ) {
    this.steps = new Names(known.steps, known.names?.steps);
    this.inside = new UnitsInside(this.oddities, known.mayBoth ?? (() => false));
    this.inOrder = new InOrder(this.oddities, (events) => {
      take(events.filter((event) => this.isTaken(event)));
    });
  }

  take(cells: Cells, line: number): void {
    const { reading } = this;
    if (reading === undefined) {
      this.begin(cells.all());
      return;
    }
    this.count++;
    if (cells.count < reading.columns.needed) {
      const told = 'rows with too few cells are left out';
      this.oddities.add('too few columns', 'left out', line, cells.all().join(','), told);
    } else if (this.stays === undefined) {
      const event = eventOf(cells, line, reading);
      if (event !== undefined) this.inOrder.add(event, true);
    } else {
      const events = this.stays.eventsOf(cells, line);
      if (events.length > 0) this.used++;
      for (const event of events) this.inOrder.add(event, false);
    }
  }

  end(encoding: Encoding): LogRead {
    if (this.reading === undefined)
      throw new Unreadable('expected a head and rows, got an empty file', 'write the log anew');
    this.inOrder.end();
    const { columns } = this.reading;
    return {
      form: columns.form,
      encoding,
      rows: this.count,
      used: this.used,
      oddities: this.oddities.list(),
      unknownSteps: this.steps.unknownNames(),
      ignored: columns.ignored,
      from: this.to < this.from ? NaN : this.from,
      to: this.to < this.from ? NaN : this.to,
      isInOrder: this.isInOrder,
    };
  }

  private begin(head: readonly string[]): void {
    const { known, oddities } = this,
      columns = columnsOf(head),
      clocks = new Clocks(known.clockOf ?? (() => undefined), oddities);
    clocks.reader.strokes = this.strokes;
    this.reading = {
      columns,
      clocks,
      oddities,
      steps: this.steps,
      stations: new Names(known.stations, known.names?.stations),
      mapped: mappedBy(known.names),
    };
    if (columns.form === 'stays') this.stays = new Stays(this.reading);
  }

  private isTaken(event: LoggedEvent): boolean {
    const isRow = this.stays === undefined;
    if (!this.inside.takes(event, isRow)) return false;
    if (isRow) this.used++;
    if (event.at < this.to) this.isInOrder = false;
    this.from = Math.min(this.from, event.at);
    this.to = Math.max(this.to, event.at);
    return true;
  }
}
