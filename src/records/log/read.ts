import { mappedBy } from '../names.js';
import { Decoder, type Encoding } from '../table/bytes.js';
import type { Cells } from '../table/cells.js';
import { RowSplitter } from '../table/rows.js';
import type { StrokeOrder } from '../table/times.js';
import { Unreadable } from '../unreadable.js';
import { Cleaned, type Known, type LogRead } from './cleaned.js';
import { Clocks } from './clocks.js';
import { columnsOf } from './columns.js';
import type { FloorEvent } from './event.js';
import { eventOf, type RowReading } from './row-events.js';
import { Stays } from './stays.js';
import { type Open, strokeOrder } from './stroke-order.js';

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
    cleaned = new Cleaned(known, take),
    rows = new LogRows(known, await strokeOrder(open), cleaned),
    splitter = new RowSplitter((cells, line) => {
      rows.take(cells, line);
    });
  let bytes = 0;
  for await (const part of open()) {
    splitter.push(decoder.push(part));
    bytes += part.length;
    progress?.(bytes, cleaned.rows);
  }
  splitter.push(decoder.end());
  splitter.end();
  return rows.end(decoder.encoding);
}

class LogRows {
  private reading: RowReading | undefined;
  private stays: Stays | undefined;

  constructor(
    private readonly known: Known,
    private readonly strokes: StrokeOrder | undefined,
    private readonly cleaned: Cleaned,
  ) {}

  take(cells: Cells, line: number): void {
    const { reading, cleaned } = this;
    if (reading === undefined) {
      this.begin(cells.all());
      return;
    }
    cleaned.rows++;
    if (cells.count < reading.columns.needed) {
      const told = 'rows with too few cells are left out';
      cleaned.oddities.add('too few columns', 'left out', line, cells.all().join(','), told);
    } else if (this.stays === undefined) {
      const event = eventOf(cells, line, reading);
      if (event !== undefined) cleaned.add(event);
    } else cleaned.addStay(this.stays.eventsOf(cells, line));
  }

  end(encoding: Encoding): LogRead {
    if (this.reading === undefined)
      throw new Unreadable('expected a head and rows, got an empty file', 'write the log anew');
    const { form, ignored } = this.reading.columns;
    return this.cleaned.end({ form, encoding, ignored });
  }

  private begin(head: readonly string[]): void {
    const { known, cleaned } = this,
      { oddities, steps, stations } = cleaned,
      columns = columnsOf(head),
      clocks = new Clocks(known.clockOf ?? (() => undefined), oddities);
    clocks.reader.strokes = this.strokes;
    this.reading = { columns, clocks, oddities, steps, stations, mapped: mappedBy(known.names) };
    if (columns.form === 'stays') this.stays = new Stays(this.reading);
  }
}
