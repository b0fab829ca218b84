import type { Cells } from '../table/cells.js';
import { type EventKind, UNIT } from './event.js';
import { NO_OTHERS, NO_VALUES } from './lists.js';
import { type LoggedEvent, placeOf, type RowReading } from './row-events.js';

/** Rows of a unit that are looked at for a duplicate. */
const REMEMBERED = 8,
  MOST_UNITS = 50_000;

/**
 * A log with a row a stay of a unit at a step: when it came, when work began and ended. Of a row with nothing
 * but a start or an end only that is known. What is read of a row: its events, none where it is left out.
 */
export class Stays {
  private readonly recent = new Map<string, string[]>();

  constructor(private readonly reading: RowReading) {}

  eventsOf(cells: Cells, line: number): readonly LoggedEvent[] {
    const { columns, oddities } = this.reading,
      { at } = columns;
    const unit = cells.keptAt(at.unit);
    if (unit === '') {
      oddities.add(
        'no object',
        'left out',
        line,
        cells.all().join(','),
        'rows that name no unit are left out',
      );
      return [];
    }
    const where = placeOf(cells.keptAt(at.step), cells.keptAt(at.station), false, line, this.reading);
    if (where === undefined) return [];
    const times = [cells.at(at.arrived), cells.at(at.started), cells.at(at.ended)] as const;
    if (times[1] === '' && times[2] === '' && times[0] === '') {
      oddities.add('no time', 'left out', line, cells.all().join(','), 'rows without a time are left out');
      return [];
    }
    if (this.isRepeated(unit, `${where.step}\n${times.join('\n')}`)) {
      oddities.add(
        'duplicate',
        'left out',
        line,
        cells.all().join(','),
        'rows that say the same again are left out',
      );
      return [];
    }
    const read: (number | undefined)[] = [];
    for (const column of [at.arrived, at.started, at.ended]) {
      const isThere = cells.at(column) !== '',
        time = isThere
          ? this.reading.clocks.at(cells, column, unit, where.step, where.station, line)
          : undefined;
      // One time that cannot be read is enough: the row is left out.
      if (isThere && time === undefined) return [];
      read.push(time);
    }
    const [, started, ended] = read;
    let [arrived] = read;
    if (started !== undefined && ended !== undefined && ended < started) {
      const told = 'rows whose end is ahead of their start are left out';
      oddities.add('negative time', 'left out', line, `${times[1]} to ${times[2]}`, told);
      return [];
    }
    const first = started ?? ended;
    if (arrived !== undefined && first !== undefined && arrived > first) {
      const told = 'arrivals behind the start of the work are not read, the rest of the row is';
      oddities.add('out of order', 'mended', line, `${times[0]}, ${times[1]}`, told);
      arrived = undefined;
    }
    const event = (kind: EventKind, time: number | undefined): LoggedEvent[] =>
      time === undefined
        ? []
        : [
            {
              at: time,
              kind,
              object: unit,
              type: UNIT,
              ...where,
              others: NO_OTHERS,
              values: NO_VALUES,
              line,
            },
          ];
    return [...event('arrive', arrived), ...event('start', started), ...event('end', ended)];
  }

  private isRepeated(unit: string, said: string): boolean {
    const before = this.recent.get(unit);
    if (before?.includes(said) === true) return true;
    if (this.recent.size >= MOST_UNITS) this.recent.clear();
    if (before === undefined) this.recent.set(unit, [said]);
    else {
      before.push(said);
      if (before.length > REMEMBERED) before.shift();
    }
    return false;
  }
}
