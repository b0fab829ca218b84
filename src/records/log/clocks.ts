import type { Oddities } from '../oddity.js';
import type { Cells } from '../table/cells.js';
import { type TimeRead, TimeReader } from '../table/times.js';
import type { WallClock } from '../table/wall-clock.js';

/** The wall clock by which a row is written that says no offset; undefined: nobody knows. */
export type ClockOf = (step: string, station: string) => WallClock | undefined;

/** Times of a log: those without an offset are read by the wall clock of the station's site. */
export class Clocks {
  readonly reader = new TimeReader();
  /** Last time of a unit, of those whose clock showed a time twice: by it the second of them is told. */
  private readonly last = new Map<string, number>();

  constructor(
    private readonly clockOf: ClockOf,
    private readonly oddities: Oddities,
  ) {}

  /** Minutes of UTC of the time in a column; undefined: left out, and counted. */
  at(
    cells: Cells,
    column: number,
    object: string,
    step: string,
    station: string,
    line: number,
  ): number | undefined {
    const read = this.reader.readCell(cells, column);
    if (read !== undefined && !read.isLocal) return read.minutes;
    return this.local(read, cells.at(column), object, step, station, line);
  }

  private local(
    read: TimeRead | undefined,
    text: string,
    object: string,
    step: string,
    station: string,
    line: number,
  ): number | undefined {
    const { oddities } = this;
    if (text === '') {
      oddities.add('no time', 'left out', line, text, 'rows without a time are left out');
      return undefined;
    }
    if (read === undefined) {
      const told = 'rows whose time cannot be read are left out; write it as 2027-08-16T06:00:00+02:00';
      oddities.add('unreadable time', 'left out', line, text, told);
      return undefined;
    }
    const clock = this.clockOf(step, station);
    if (clock === undefined) {
      const told = 'times without an offset are left out where the zone of the step is not known';
      oddities.add('time without a zone', 'left out', line, text, told);
      return undefined;
    }
    const meaning = clock.meaning(read.minutes);
    if (meaning === 'skipped') {
      const told = `times that the clock of ${clock.zone} skips in spring are left out`;
      oddities.add('time that the clock skips', 'left out', line, text, told);
      return undefined;
    }
    const first = clock.instant(read.minutes);
    if (meaning === 'one') {
      // Of autumn only what is near: a day of units is remembered, no more.
      if (clock.meaning(read.minutes + NEAR) !== 'one') this.remember(object, first);
      return first;
    }
    const before = this.last.get(object),
      at = before !== undefined && before > first ? clock.second(read.minutes) : first;
    this.remember(object, at);
    const told =
      `the clock of ${clock.zone} shows these times twice in autumn: the first is taken, the second where ` +
      'the unit was later than that already';
    oddities.add('time that the clock shows twice', 'taken as it is', line, text, told);
    return at;
  }

  private remember(object: string, at: number): void {
    if (this.last.size > MOST_UNITS) this.last.clear();
    this.last.set(object, Math.max(at, this.last.get(object) ?? at));
  }
}

/** So long ahead of a doubtful hour the times of units are remembered, minutes; and of so many units. */
const NEAR = 180,
  MOST_UNITS = 100_000;
