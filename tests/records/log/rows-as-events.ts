import { Clocks } from '../../../src/records/log/clocks.js';
import { type Columns, columnsOf } from '../../../src/records/log/columns.js';
import { eventOf, type LoggedEvent } from '../../../src/records/log/row-events.js';
import { mappedBy, Names } from '../../../src/records/names.js';
import { Oddities } from '../../../src/records/oddity.js';
import { RowSplitter } from '../../../src/records/table/rows.js';

/** The rows of a log as events, one by one: not put into order, and nothing said twice taken out. */
export function rowsAsEvents(text: string): LoggedEvent[] {
  const oddities = new Oddities(),
    events: LoggedEvent[] = [],
    reading = {
      clocks: new Clocks(() => undefined, oddities),
      steps: new Names(undefined),
      stations: new Names(undefined),
      mapped: mappedBy(),
      oddities,
    };
  let columns: Columns | undefined;
  const splitter = new RowSplitter((cells, line) => {
    if (columns === undefined) {
      columns = columnsOf(cells.all());
      return;
    }
    const event = eventOf(cells, line, { ...reading, columns });
    if (event !== undefined) events.push(event);
  });
  splitter.push(new TextEncoder().encode(text));
  splitter.end();
  if (oddities.list().length > 0) throw new Error(JSON.stringify(oddities.list()));
  return events;
}
